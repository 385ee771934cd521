using Coilwright.Physics;

namespace Coilwright.Workshop.Steps;

/// <summary>How much faster ink or glue hardens when it is warmer. The sheet's times come from the shop's own data sheet.</summary>
/// <param name="DoublesPer10C">True to count the rate as doubled for every 10 °C; false takes the sheet's times as they stand.</param>
/// <param name="SheetC">Temperature that the sheet's times stand for, °C.</param>
/// <remarks>
/// Doubling per 10 °C is a rule of thumb of common practice, no source that can be named [CureRate]; a shop that has better figures
/// switches it off.
/// </remarks>
public sealed record CureRule(bool DoublesPer10C = true, double SheetC = 20)
{
    /// <summary>Rate against the sheet's temperature: 1 there, 2 at 10 °C more.</summary>
    public double Rate(double temperatureC) => DoublesPer10C ? Math.Pow(2, (Require.InRange(temperatureC, -40, 155) - SheetC) / 10) : 1;

    /// <summary>How long a sheet's time takes at a temperature.</summary>
    public TimeSpan At(TimeSpan sheetTime, double temperatureC) => sheetTime / Rate(temperatureC);

    /// <summary>The rule in words, for wherever its result is shown.</summary>
    public string Words =>
        DoublesPer10C
            ? FormattableString.Invariant(
                $"rate doubles per 10 °C from the sheet's {SheetC:0.#} °C (common practice, no source; can be switched off)"
            )
            : "the sheet's time as it stands (rule for warmth switched off)";
}
