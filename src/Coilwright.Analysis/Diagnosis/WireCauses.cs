namespace Coilwright.Analysis.Diagnosis;

/// <summary>Causes that move the ohms alone, or nearly: the wire, its tension, its gauge, a joint, and warmth.</summary>
internal static class WireCauses
{
    /// <summary>ln of the ratio in ohms per metre between neighbouring AWG sizes: 2·ln(92^(1/39)) (the gauge's definition).</summary>
    private const double AwgStep = 0.23189;

    /// <summary>Thin or thick wire against its gauge: ln of ohms per metre. Nominal 42 AWG may lie ±8 %; most spools lie nearer.</summary>
    public static readonly LogSpread OffWire = new(0.042, 0.02);

    /// <summary>Wire stretched on the winder: ln of ohms per metre.</summary>
    public static readonly LogSpread Stretch = new(0.025, 0.012);

    /// <summary>A spool of its own among the batch's: <paramref name="sign"/> 1 for thin wire, −1 for thick.</summary>
    public static IEnumerable<CauseTerm> OffSpool(CoilEvidence evidence, int sign) =>
        Sizes(OffWire)
            .Select(one =>
                CauseTerm.OfOhms(
                    one.Share,
                    one.Size,
                    new LogSpread(sign * one.Size, LogSpread.Root(SizeStep(OffWire), CauseTerm.OhmScatter)),
                    evidence
                ) with
                {
                    Wire = new LogSpread(sign * one.Size, 0.006),
                }
            );

    /// <summary>Wire pulled too hard on this coil.</summary>
    public static IEnumerable<CauseTerm> Stretched(CoilEvidence evidence) =>
        Sizes(Stretch)
            .Select(one =>
                CauseTerm.OfOhms(
                    one.Share,
                    one.Size,
                    new LogSpread(one.Size, LogSpread.Root(SizeStep(Stretch), CauseTerm.OhmScatter)),
                    evidence
                )
            );

    /// <summary>Warmer than taken by about 10 K, fresh from the winder or the hand.</summary>
    public static IEnumerable<CauseTerm> Warm(CoilEvidence evidence)
    {
        const double Mean = 10;
        double deviation = evidence.TemperatureKnown ? 5 : 7;
        double[] sizes = [.. Enumerable.Range(2, 34).Select(kelvin => (double)kelvin)];
        double total = sizes.Sum(size => Bell((size - Mean) / deviation));
        return sizes.Select(size =>
            CauseTerm.OfOhms(
                Bell((size - Mean) / deviation) / total,
                size,
                new LogSpread(Math.Log(1 + 0.00393 * size), CauseTerm.OhmScatter),
                evidence
            ) with
            {
                Again = new LogSpread(0, CauseTerm.OhmScatter),
            }
        );
    }

    /// <summary>
    /// In series with the coil: from 40 Ω to 2.5 kΩ, or two fifths of its own ohms where that is more, even in the logarithm.
    /// </summary>
    public static IEnumerable<CauseTerm> Joints(CoilEvidence evidence)
    {
        const int Count = 64; // neighbours nearer than their scatter
        return Steps(40 / evidence.NominalOhm, Math.Max(2500 / evidence.NominalOhm, 0.4), Count)
            .Select(extra =>
                CauseTerm.OfOhms(
                    1.0 / Count,
                    extra,
                    new LogSpread(Math.Log(1 + extra), LogSpread.Root(CauseTerm.OhmScatter, 0.045 * extra / (1 + extra))),
                    evidence
                )
            );
    }

    /// <summary>
    /// One gauge off, more seldom two or half a one. A thinner wire makes a thinner coil: shorter turns, and L a little different.
    /// </summary>
    public static IEnumerable<CauseTerm> Gauges(CoilEvidence evidence) =>
        new[] { (-2.0, 0.06), (-1, 0.39), (-0.5, 0.05), (0.5, 0.05), (1, 0.39), (2, 0.06) }.Select(step =>
            CauseTerm.OfOhms(step.Item2, step.Item1, new LogSpread(0.93 * step.Item1 * AwgStep, 0.02), evidence) with
            {
                Henry = new LogSpread(0.016 * step.Item1, LogSpread.Root(CauseTerm.HenryScatter, 0.016 * step.Item1)),
                Wire = new LogSpread(step.Item1 * AwgStep, 0.03),
            }
        );

    /// <summary>
    /// Sizes that a wire can be off by, each with its share. None is below zero: thin wire reads high, thick wire low, always.
    /// </summary>
    public static (double Size, double Share)[] Sizes(LogSpread wire)
    {
        double step = 2 * SizeStep(wire);
        double[] sizes = [.. Enumerable.Range(1, (int)Math.Round((wire.Mean + 3 * wire.Deviation) / step)).Select(n => n * step)];
        double total = sizes.Sum(size => Bell((size - wire.Mean) / wire.Deviation));
        return [.. sizes.Select(size => (size, Bell((size - wire.Mean) / wire.Deviation) / total))];
    }

    /// <summary>Half the distance between two sizes, taken as the deviation of each.</summary>
    public static double SizeStep(LogSpread wire) => wire.Deviation / 4;

    /// <summary>Numbers even in the logarithm.</summary>
    public static IEnumerable<double> Steps(double from, double to, int count) =>
        Enumerable.Range(0, count).Select(n => from * Math.Pow(to / from, n / (count - 1.0)));

    /// <summary>A normal density up to its factor.</summary>
    public static double Bell(double x) => Math.Exp(-0.5 * x * x);
}
