namespace Coilwright.Workshop.Entry;

/// <summary>What a typed quantity measures. The unit of <see cref="Entered.Si"/> stands beside each.</summary>
public enum QuantityKind
{
    /// <summary>m.</summary>
    Length,

    /// <summary>Ω.</summary>
    Resistance,

    /// <summary>H.</summary>
    Inductance,

    /// <summary>F.</summary>
    Capacitance,

    /// <summary>°C; degrees Fahrenheit and kelvin are turned into it.</summary>
    Temperature,

    /// <summary>Hz.</summary>
    Frequency,

    /// <summary>N.</summary>
    Force,

    /// <summary>Turns per minute.</summary>
    Speed,

    /// <summary>kg.</summary>
    Mass,

    /// <summary>A part of one: 5 % is 0.05.</summary>
    Fraction,

    /// <summary>S/m.</summary>
    Conductivity,

    /// <summary>T.</summary>
    FluxDensity,

    /// <summary>Turns, a count.</summary>
    Turns,

    /// <summary>F/m.</summary>
    CapacitancePerLength,

    /// <summary>Ω/m.</summary>
    ResistancePerLength,

    /// <summary>V.</summary>
    Voltage,

    /// <summary>s.</summary>
    Duration,
}
