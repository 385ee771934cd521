namespace Coilwright.Physics.Electrostatics;

/// <summary>One set of what is not known between winding and metal: −1, 0 and 1 for the low end, the middle and the high end.</summary>
/// <param name="Permittivity">Of the bobbins and tapes.</param>
/// <param name="Thickness">Of flanges and walls that no recipe states.</param>
/// <param name="Fill">How much of the gap outside a winding its potting fills: none, the middle, all.</param>
internal readonly record struct StrayCase(int Permittivity, int Thickness, int Fill)
{
    /// <summary>The middle, then both ends of each.</summary>
    public static IReadOnlyList<StrayCase> All { get; } =
    [default, new(-1, 0, 0), new(1, 0, 0), new(0, -1, 0), new(0, 1, 0), new(0, 0, -1), new(0, 0, 1)];

    public double Of(Estimate permittivity) => End(permittivity, Permittivity);

    public double ThicknessOf(Estimate thicknessM) => End(thicknessM, Thickness);

    /// <summary>Permittivity of the gap outside: air, the potting, or the middle of both.</summary>
    public double FillOf(double potting) =>
        Fill switch
        {
            < 0 => 1,
            > 0 => potting,
            _ => Math.Sqrt(potting),
        };

    private static double End(Estimate estimate, int side) =>
        side switch
        {
            < 0 => estimate.Low,
            > 0 => estimate.High,
            _ => estimate.Value,
        };
}
