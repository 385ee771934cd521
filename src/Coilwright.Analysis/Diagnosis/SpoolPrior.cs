using System.Collections.Concurrent;

namespace Coilwright.Analysis.Diagnosis;

/// <summary>What the coils of one spool may have in common in ln R, and why.</summary>
internal static class SpoolPrior
{
    /// <summary>Reach and step of the grid of common offsets; the step is less than one coil's scatter.</summary>
    private const double Reach = 0.2,
        Step = 0.004;

    /// <summary>
    /// What spools of one gauge lie apart without a fault, and from their table where they were measured. Our assumption.
    /// </summary>
    private const double Spools = 0.015,
        Measured = 0.004;

    /// <summary>Offsets that are weighed.</summary>
    public static readonly double[] Grid = [.. Enumerable.Range(0, (int)Math.Round(2 * Reach / Step) + 1).Select(n => -Reach + n * Step)];

    /// <summary>Causes that a whole spool or set-up can have, in the order of <see cref="WeightsAt"/>.</summary>
    public static readonly string[] Causes = ["none", "thin-wire", "thick-wire", "stretched-wire"];

    private static readonly ConcurrentDictionary<(double OhmOffset, bool WireMeasured), double[][]> s_known = new();

    /// <summary>Prior weight of each cause together with an offset.</summary>
    /// <param name="place">Place of the offset in <see cref="Grid"/>.</param>
    /// <param name="evidence">Whose spool it is.</param>
    public static double[] WeightsAt(int place, CoilEvidence evidence) => All(evidence)[place];

    /// <summary>The same at every offset.</summary>
    public static double[][] All(CoilEvidence evidence) => s_known.GetOrAdd((evidence.OhmOffset, evidence.WireMeasured), Compute);

    private static double[][] Compute((double OhmOffset, bool WireMeasured) of)
    {
        double wire = of.WireMeasured ? 0.005 : 0.045,
            set = 0.015,
            usual = LogSpread.Root(of.OhmOffset, of.WireMeasured ? Measured : Spools);
        return
        [
            .. Grid.Select(offset =>
                new[]
                {
                    (1 - 2 * wire - set) * Density(offset, 0, usual),
                    wire * Wires(offset, WireCauses.OffWire, of.OhmOffset),
                    wire * Wires(-offset, WireCauses.OffWire, of.OhmOffset),
                    set * Wires(offset, WireCauses.Stretch, of.OhmOffset),
                }
            ),
        ];
    }

    /// <summary>Density of an offset that a wire brings about, with what the set-up adds to it.</summary>
    private static double Wires(double offset, LogSpread wire, double more) =>
        WireCauses.Sizes(wire).Sum(one => one.Share * Density(offset, one.Size, WireCauses.SizeStep(wire), more));

    private static double Density(double x, double mean, double deviation, double more = 0)
    {
        double variance = deviation * deviation + more * more,
            off = x - mean;
        return Math.Exp(-0.5 * off * off / variance) / Math.Sqrt(2 * Math.PI * variance);
    }
}
