namespace Coilwright.Analysis.Diagnosis;

/// <summary>What the coils of one spool may have in common in ln R, and why.</summary>
internal static class SpoolPrior
{
    /// <summary>Reach and step of the grid of common offsets.</summary>
    private const double Reach = 0.2, Step = 0.0025;

    /// <summary>Offsets that are weighed.</summary>
    public static readonly double[] Grid = [.. Enumerable.Range(0, (int)Math.Round(2 * Reach / Step) + 1).Select(n => -Reach + n * Step)];

    /// <summary>Causes that a whole spool or set-up can have, in the order of <see cref="At"/>.</summary>
    public static readonly string[] Causes = ["none", "thin-wire", "thick-wire", "stretched-wire"];

    /// <summary>Prior weight of each cause together with an offset.</summary>
    public static double[] At(double offset, CoilEvidence evidence)
    {
        double wire = evidence.WireMeasured ? 0.005 : 0.045, set = 0.015;
        CauseTable.Spread off = CauseTable.OffWire, stretch = CauseTable.Stretch;
        return
        [
            (1 - 2 * wire - set) * Density(offset, 0, evidence.OhmOffset),
            wire * Density(offset, off.Mean, off.Deviation, evidence.OhmOffset),
            wire * Density(offset, -off.Mean, off.Deviation, evidence.OhmOffset),
            set * Density(offset, stretch.Mean, stretch.Deviation, evidence.OhmOffset),
        ];
    }

    private static double Density(double x, double mean, double deviation, double more = 0)
    {
        double variance = deviation * deviation + more * more, off = x - mean;
        return Math.Exp(-0.5 * off * off / variance) / Math.Sqrt(2 * Math.PI * variance);
    }
}
