namespace Coilwright.Papers.Formatting;

/// <summary>In what an axis counts: a unit whose numbers are short, and how many of it make one SI unit.</summary>
/// <param name="Unit">Its symbol; empty for a plain number.</param>
/// <param name="PerSi">How many of it make one SI unit.</param>
public sealed record DisplayScale(string Unit, double PerSi)
{
    /// <summary>The scale for values of this size.</summary>
    /// <param name="unit">SI unit as printed.</param>
    /// <param name="largest">The largest value that is drawn, SI.</param>
    public static DisplayScale For(string unit, double largest) =>
        unit switch
        {
            "Ω" or "Hz" when Math.Abs(largest) >= 1000 => new("k" + unit, 1e-3),
            "H" when Math.Abs(largest) < 0.1 => new("mH", 1e3),
            "F" => new("pF", 1e12),
            "m" when Math.Abs(largest) < 1 => new("mm", 1e3),
            "kg" => new("g", 1e3),
            "T" => new("mT", 1e3),
            "V·s/m" => new("mV per m/s", 1e3),
            "m²" => new("cm²", 1e4),
            "1" => new("", 1),
            _ => new(unit, 1),
        };
}
