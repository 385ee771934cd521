namespace Coilwright.Workshop.Tests.Causes;

/// <summary>
/// What a simulated shop does wrong, and by how much. Written down on 1 December 2026 before the causes were tuned, from what each fault
/// is, and never moved since: sizes are even between two ends (in the logarithm where a range spans decades), faults are equally frequent
/// but for a factor of up to two either way that each shop draws for itself. The program's own starting rates are not used here.
/// </summary>
internal static class FaultRanges
{
    /// <summary>One kind of fault that is drawn.</summary>
    /// <param name="Kind">Its name here.</param>
    /// <param name="Cause">The cause that is right.</param>
    /// <param name="Low">Least size.</param>
    /// <param name="High">Largest size.</param>
    /// <param name="IsDecades">Whether sizes are even in the logarithm.</param>
    internal sealed record Range(string Kind, string Cause, double Low, double High, bool IsDecades = false);

    public static readonly Range[] All =
    [
        new("miscount", "miscount", 0.01, 0.15), // part of the turns, either sign
        new("half the turns", "miscount", 0.5, 0.5),
        new("twice the turns", "miscount", 2, 2),
        new("a digit dropped", "miscount", 0.1, 0.1), // 800 for 8,000
        new("a round number dropped", "miscount", 500, 1000), // one of the two, turns
        new("shorted turns", "shorted-turns", 0.01, 0.2, IsDecades: true), // part of the turns
        new("thin wire, one coil", "thin-wire", 0.02, 0.08), // part of the ohms per metre
        new("thin wire, rest of the batch", "thin-wire", 0.02, 0.08),
        new("stretched wire", "stretched-wire", 0.01, 0.05), // part of the ohms
        new("warm coil", "warm-coil", 4, 15), // °C over what was typed
        new("bad joint", "high-resistance-joint", 50, 2000, IsDecades: true), // Ω
        new("wrong core", "wrong-core", 0, 1), // another material or none
        new("wrong gauge", "wrong-gauge", 1, 1), // one size too thin
        new("half a gauge", "wrong-gauge", 0.5, 0.5),
        new("finger across the clips", "parallel-path", 3e4, 1e6, IsDecades: true), // Ω
        new("open", "open", 0, 0),
        new("broken wire", "broken-coupled", 2.6e5, 1e7, IsDecades: true), // Ω
        new("wrong range", "meter-error", 0, 0), // ten times, a tenth, a thousandth
    ];

    /// <summary>
    /// Kinds that are left out of the ranking: those that any reading tells, and further slips of the count beside half the turns. They
    /// would make it look better.
    /// </summary>
    public static readonly string[] NotRanked =
    [
        "open",
        "broken wire",
        "wrong range",
        "half a gauge",
        "twice the turns",
        "a digit dropped",
        "a round number dropped",
    ];

    /// <summary>Kinds of which every one must be found.</summary>
    public static readonly string[] Slips = ["half the turns", "twice the turns", "a digit dropped", "a round number dropped"];

    /// <summary>Standard deviations, parts of one unless said: spools, the coil's own scatter, the meters.</summary>
    public const double Spools = 0.02,
        OhmScatter = 0.004,
        HenryScatter = 0.006,
        LossScatter = 0.03,
        OhmMeter = 0.0005,
        HenryMeter = 0.002,
        QualityMeter = 0.01;

    /// <summary>A typed temperature lies evenly within this of the coil's, °C.</summary>
    public const double TypedWithinC = 1;

    /// <summary>How far a whole batch lies from its target, and from its forecast: R, L, Q's losses.</summary>
    public static readonly (double Ohm, double Henry, double Loss) FromTarget = (0.004, 0.005, 0.2),
        FromForecast = (0.006, 0.015, 0.2);

    public const int BatchSize = 12;
}
