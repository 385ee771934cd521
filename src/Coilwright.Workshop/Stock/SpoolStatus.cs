using System.Globalization;
using Coilwright.Physics;

namespace Coilwright.Workshop.Stock;

/// <summary>One use of a spool: a coil wound or scrapped, or several of a batch that took the same.</summary>
/// <param name="Batch">Name of the batch.</param>
/// <param name="Tag">The coil; empty for several.</param>
/// <param name="WireM">Wire taken, m.</param>
/// <param name="Scrapped">True when it was scrapped.</param>
/// <param name="TimeUtc">When; the last of several.</param>
public sealed record SpoolUse(string Batch, string Tag, double WireM, bool Scrapped, DateTimeOffset TimeUtc)
{
    /// <summary>How many coils.</summary>
    public int Coils { get; init; } = 1;
}

/// <summary>A spool as it stands. SI units.</summary>
public sealed record SpoolStatus
{
    public required SpoolRecord Spool { get; init; }

    /// <summary>What its last measured length says; null when none was measured.</summary>
    public SpoolMeasure? Measure { get; init; }

    /// <summary>Mass of a metre with its enamel, kg/m.</summary>
    public required Estimate MassKgPerM { get; init; }

    /// <summary>Wire left, m; null when neither weighed nor received with a mass.</summary>
    public Estimate? RemainingM { get; init; }

    /// <summary>Where <see cref="RemainingM"/> comes from.</summary>
    public required string RemainingWords { get; init; }

    /// <summary>Coils wound or scrapped from it, in order of time.</summary>
    public required IReadOnlyList<SpoolUse> Uses { get; init; }

    /// <summary>Its wire in a line: lot, and what a measured length reads.</summary>
    public string WireWords =>
        string.Join(
            ", ",
            (
                (string[])
                    [
                        Spool.Gauge,
                        Spool.Lot.Length > 0 ? "lot " + Spool.Lot : "",
                        Measure is { } measure
                            ? string.Create(CultureInfo.InvariantCulture, $"{measure.OhmPerM.Value:0.000} Ω/m measured")
                            : "not measured",
                    ]
            ).Where(part => part.Length > 0)
        );

    /// <summary>How many coils.</summary>
    public int Coils => Uses.Sum(use => use.Coils);

    /// <summary>How many of them were scrapped.</summary>
    public int Scrapped => Uses.Where(use => use.Scrapped).Sum(use => use.Coils);

    /// <summary>Wire booked, m.</summary>
    public double UsedM => Uses.Sum(use => use.WireM);

    /// <summary>Whole coils left: the fewest and the most within the interval; null when what is left is not known.</summary>
    public (int Fewest, int Most)? CoilsLeft(double wirePerCoilM) =>
        RemainingM is { } left
            ? ((int)Math.Floor(Math.Max(0, left.Low) / wirePerCoilM), (int)Math.Floor(Math.Max(0, left.High) / wirePerCoilM))
            : null;

    /// <summary>Will it finish so many coils? "yes", "no", or "perhaps" when the interval holds both.</summary>
    public string WillFinish(int coils, double wirePerCoilM) =>
        CoilsLeft(wirePerCoilM) switch
        {
            null => "not known: weigh it",
            var (fewest, _) when fewest >= coils => "yes",
            var (_, most) when most < coils => "no",
            _ => "perhaps",
        };
}
