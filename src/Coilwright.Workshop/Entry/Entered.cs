namespace Coilwright.Workshop.Entry;

/// <summary>A quantity as a person typed it and as it was understood.</summary>
/// <param name="Si">The value in the unit that <see cref="QuantityKind"/> states: SI, but °C, turns per minute and parts of one.</param>
/// <param name="Typed">Exactly what was typed.</param>
/// <param name="UnitTyped">The unit typed, or the customary one taken for a bare number, in its standard spelling.</param>
public readonly record struct Entered(double Si, string Typed, string UnitTyped)
{
    /// <summary>Half the width of the 95 % interval that was typed behind a ±, SI; null where none was typed.</summary>
    public double? HalfWidth { get; init; }

    /// <summary>Stands for a field that was missing or not understood; compares as neither larger nor smaller than anything.</summary>
    public static Entered Unknown { get; } = new(double.NaN, "", "");

    /// <summary>True unless this is <see cref="Unknown"/>.</summary>
    public bool IsKnown => !double.IsNaN(Si);
}
