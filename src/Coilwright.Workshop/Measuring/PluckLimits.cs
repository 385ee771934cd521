using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Measuring;

/// <summary>What a pluck may be, alike for the command and the page.</summary>
public static class PluckLimits
{
    /// <summary>Pitch to play.</summary>
    public static Limits Pitch { get; } = new(QuantityKind.Frequency, 20, 2000, "Hz", "110 Hz");

    /// <summary>Place of the pluck from the bridge.</summary>
    public static Limits Pluck { get; } = new(QuantityKind.Length, 1e-3, 2, "mm", "120 mm");

    /// <summary>Width of what plucks.</summary>
    public static Limits Width { get; } = new(QuantityKind.Length, 0, 0.05, "mm", "10 mm");

    /// <summary>Length of the sound in a file.</summary>
    public static Limits Length { get; } = new(QuantityKind.Duration, 0.1, 60, "s", "5 s");

    /// <summary>Length of the sound on a page, whose sounds stay in memory.</summary>
    public static Limits LengthOnPage { get; } = Length with { Min = 0.5, Max = 10 };
}
