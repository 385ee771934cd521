namespace Coilwright.Analysis.Diagnosis;

/// <summary>What each cause does to a coil's readings, and how often it is taken to happen.</summary>
/// <remarks>
/// Shifts are in natural logarithms of read over wanted. Priors and scatters are our assumptions: common practice at best, no source
/// [FaultRates]. They are round numbers on purpose.
/// </remarks>
internal static class CauseTable
{
    /// <summary>ln of the ratio in ohms per metre between neighbouring AWG sizes: 2·ln(92^(1/39)) (the gauge's definition).</summary>
    private const double AwgStep = 0.23189;

    /// <summary>Thin or thick wire against its gauge: ln of ohms per metre. Nominal 42 AWG may lie ±8 %; most spools lie nearer.</summary>
    internal static readonly Spread OffWire = new(0.042, 0.02);

    /// <summary>Wire stretched on the winder: ln of ohms per metre.</summary>
    internal static readonly Spread Stretch = new(0.022, 0.01);

    /// <summary>What one coil scatters from the next when nothing is wrong.</summary>
    internal const double OhmScatter = 0.005,
        HenryScatter = 0.008,
        QualityScatter = 0.025;

    /// <summary>Least that a meter shows through a broken wire, Ω: a rule of thumb, common practice, no source.</summary>
    private const double LeastLeakageOhm = 2.6e5;

    private static readonly Spread s_counted = new(0, 0.001);

    /// <summary>Turns that a tired hand leaves out or adds.</summary>
    private static readonly double[] s_roundNumbers = [100, 200, 500, 1000, 2000];

    private static readonly Spread s_steady = new(0, HenryScatter);

    /// <summary>Mean and standard deviation of a logarithm.</summary>
    internal readonly record struct Spread(double Mean, double Deviation);

    /// <summary>One size of one cause.</summary>
    /// <param name="Cause">Its name in the file format.</param>
    /// <param name="Weight">Prior probability of this size of this cause.</param>
    /// <param name="Size">How big: part of the turns, kelvin or gauge steps.</param>
    /// <param name="Ohm">ln R/R₀.</param>
    /// <param name="Henry">ln L/L₀.</param>
    /// <param name="Quality">ln Q/Q₀.</param>
    /// <param name="Turns">ln of counted over wanted turns.</param>
    internal sealed record Term(string Cause, double Weight, double Size, Spread Ohm, Spread Henry, Spread Quality, Spread Turns)
    {
        /// <summary>ln R/R₀ when read once more, cold, on a second meter.</summary>
        public Spread Again { get; init; } = Ohm;

        /// <summary>ln of true over wanted turns.</summary>
        public double TrueTurns { get; init; }

        /// <summary>ln of the spool's ohms per metre over the wire table's.</summary>
        public Spread Wire { get; init; } = new(0, 0.006);

        /// <summary>False where the coil's own wire has no say in what the meter shows.</summary>
        public bool FollowsBatch { get; init; } = true;
    }

    /// <summary>Every size of every cause that this coil can have, "none" last; the weights sum to one.</summary>
    internal static IReadOnlyList<Term> CreateTerms(CoilEvidence evidence)
    {
        List<Term> faults =
        [
            .. Wires(evidence),
            .. Miscounts(0.03, tail: 0.006, evidence.NominalTurns),
            .. Warmths(evidence.TemperatureKnown ? 0.005 : 0.08, evidence.TemperatureKnown ? 4 : 8, evidence),
            .. Shorts(0.02, evidence),
            .. Joints(0.004, evidence),
            .. Gauges(0.006, evidence),
            .. Cores(0.008, evidence),
            .. Meters(0.012),
            .. Broken(0.005, evidence),
            .. Connections(evidence),
        ];
        faults.Add(Shift("none", 1 - faults.Sum(fault => fault.Weight), 0, new Spread(0, OhmScatter), evidence));
        return faults;
    }

    /// <summary>A spool of its own among the batch's, or wire pulled too hard on this coil alone.</summary>
    private static IEnumerable<Term> Wires(CoilEvidence evidence)
    {
        double wire = (evidence.Spool.Length > 0 ? 0.001 : 0.006) * (evidence.WireMeasured ? 0.1 : 1);
        foreach ((double size, double share) in Sizes(OffWire))
        {
            double deviation = Root(SizeStep(OffWire), OhmScatter);
            yield return Shift("thin-wire", wire * share, size, new Spread(size, deviation), evidence) with
            {
                Wire = new Spread(size, 0.006),
            };
            yield return Shift("thick-wire", wire * share, size, new Spread(-size, deviation), evidence) with
            {
                Wire = new Spread(-size, 0.006),
            };
        }

        foreach ((double size, double share) in Sizes(Stretch))
        {
            yield return Shift("stretched-wire", 0.008 * share, size, new Spread(size, Root(SizeStep(Stretch), OhmScatter)), evidence);
        }
    }

    /// <summary>
    /// Sizes that a wire can be off by, each with its share. None is below zero: thin wire reads high, thick wire low, always.
    /// </summary>
    internal static (double Size, double Share)[] Sizes(Spread wire)
    {
        double step = 2 * SizeStep(wire);
        double[] sizes = [.. Enumerable.Range(1, (int)Math.Round((wire.Mean + 3 * wire.Deviation) / step)).Select(n => n * step)];
        double total = sizes.Sum(size => Bell((size - wire.Mean) / wire.Deviation));
        return [.. sizes.Select(size => (size, Bell((size - wire.Mean) / wire.Deviation) / total))];
    }

    /// <summary>Half the distance between two sizes, taken as the deviation of each.</summary>
    internal static double SizeStep(Spread wire) => wire.Deviation / 4;

    /// <summary>Only the resistance moves; Q goes down by as much as the direct-current part of the loss goes up.</summary>
    private static Term Shift(string cause, double weight, double size, Spread ohm, CoilEvidence evidence)
    {
        double share = 1 / evidence.AcOverDc;
        return new Term(
            cause,
            weight,
            size,
            ohm,
            s_steady,
            new Spread(-Math.Log(1 + share * (Math.Exp(ohm.Mean) - 1)), Root(QualityScatter, share * ohm.Deviation)),
            s_counted
        );
    }

    /// <summary>
    /// Turns off by a normal 4 %; and, more seldom, half or double, a round number dropped or added, or stopped early anywhere.
    /// </summary>
    /// <remarks>
    /// L goes as the square, R a little more than in proportion because the outer turns are longer; both the less surely the more turns are
    /// missing. The counter shows it or does not.
    /// </remarks>
    private static IEnumerable<Term> Miscounts(double prior, double tail, double nominalTurns)
    {
        const double Deviation = 0.04;
        double[] sizes = [.. Enumerable.Range(-60, 121).Where(n => n != 0).Select(n => n * 0.0025)];
        double total = sizes.Sum(size => Bell(size / Deviation));
        foreach (
            (double size, double weight) in sizes
                .Select(size => (size, prior * Bell(size / Deviation) / total))
                .Concat(MiscountTails(tail, nominalTurns))
        )
        {
            double shift = Math.Log(1 + size);
            Spread ohm = new(1.05 * shift, Root(OhmScatter, 0.05 * shift)),
                henry = new(2 * shift, Root(HenryScatter, 0.1 * shift)),
                quality = new(shift, Root(QualityScatter, 0.1 * shift));
            Term unseen = new("miscount", weight / 2, size, ohm, henry, quality, s_counted) { TrueTurns = shift };
            yield return unseen;
            yield return unseen with
            {
                Turns = new Spread(shift, 0.002),
            };
        }
    }

    /// <summary>
    /// Large slips of the count: a fifth half the turns, a tenth double, two fifths a round number, the rest stopped early.
    /// </summary>
    private static IEnumerable<(double Size, double Weight)> MiscountTails(double prior, double nominalTurns)
    {
        yield return (-0.5, 0.2 * prior);
        yield return (1, 0.1 * prior);
        double[] round =
            nominalTurns <= 0
                ? []
                :
                [
                    .. s_roundNumbers
                        .SelectMany(turns => new[] { -turns, turns })
                        .Select(turns => turns / nominalTurns)
                        .Where(size => size is > -0.9 and <= 1),
                ];
        foreach (double size in round)
        {
            yield return (size, 0.4 * prior / round.Length);
        }

        double[] early = [.. Enumerable.Range(0, 40).Select(n => -0.15 - 0.02 * n)];
        foreach (double size in early)
        {
            yield return (size, (round.Length == 0 ? 0.7 : 0.3) * prior / early.Length);
        }
    }

    /// <summary>Warmer than taken by about 10 K, fresh from the winder or the hand.</summary>
    private static IEnumerable<Term> Warmths(double prior, double deviation, CoilEvidence evidence)
    {
        const double Mean = 10;
        double[] sizes = [.. Enumerable.Range(2, 39).Select(kelvin => (double)kelvin)];
        double total = sizes.Sum(size => Bell((size - Mean) / deviation));
        return sizes.Select(size =>
            Shift(
                "warm-coil",
                prior * Bell((size - Mean) / deviation) / total,
                size,
                new Spread(Math.Log(1 + 0.00393 * size), OhmScatter),
                evidence
            ) with
            {
                Again = new Spread(0, OhmScatter),
            }
        );
    }

    /// <summary>
    /// From a few turns to nearly all: even in the logarithm up to a fifth, then falling with the square, for what bridges lies side by
    /// side.
    /// </summary>
    private static IEnumerable<Term> Shorts(double prior, CoilEvidence evidence)
    {
        const double Usual = 0.2;
        double[] parts = [.. Steps(0.001, 0.97, 200), 0.99, 0.999];
        double Share(double part) => part <= Usual ? 1 : Usual * Usual / part / part;
        double total = parts.Sum(Share);
        foreach (double part in parts)
        {
            (double henry, _) = ShortedTurns.Shift(part, evidence.ReactanceAtInductance);
            (_, double quality) = ShortedTurns.Shift(part, evidence.ReactanceAtQuality, evidence.AcOverDc);
            yield return new Term(
                "shorted-turns",
                prior * Share(part) / total,
                part,
                new Spread(Math.Log(1 - part), OhmScatter + 0.05 * part),
                new Spread(henry, Root(HenryScatter, 0.1 * henry)),
                new Spread(quality, Root(QualityScatter, 0.15 * quality)),
                s_counted
            );
        }
    }

    /// <summary>Anything from 1 % to twice the coil's own resistance, in series with it.</summary>
    private static IEnumerable<Term> Joints(double prior, CoilEvidence evidence)
    {
        const int Count = 120; // neighbours nearer than their scatter
        return Steps(0.01, 2, Count)
            .Select(extra =>
                Shift(
                    "high-resistance-joint",
                    prior / Count,
                    extra,
                    new Spread(Math.Log(1 + extra), Root(OhmScatter, 0.03 * extra / (1 + extra))),
                    evidence
                )
            );
    }

    /// <summary>
    /// Half, one or two gauges off; the nearer the likelier. A thinner wire makes a thinner coil: shorter turns, and L a little different.
    /// </summary>
    private static IEnumerable<Term> Gauges(double prior, CoilEvidence evidence)
    {
        double[] steps = [-2, -1, -0.5, 0.5, 1, 2];
        double total = steps.Sum(step => 1 / Math.Abs(step));
        return steps.Select(step =>
            Shift(
                "wrong-gauge",
                prior / Math.Abs(step) / total,
                step,
                new Spread(0.97 * step * AwgStep, 0.01 + 0.02 * Math.Abs(step)),
                evidence
            ) with
            {
                Henry = new Spread(0, Root(HenryScatter, 0.02 * Math.Abs(step))),
                Wire = new Spread(step * AwgStep, 0.03),
            }
        );
    }

    /// <summary>Another alloy, steel for a magnet, or no core at all: ohms as they were, henries not.</summary>
    private static IEnumerable<Term> Cores(double prior, CoilEvidence evidence)
    {
        double bare = Math.Log(Math.Clamp(evidence.AirRatio, 0.2, 1));
        Term core = Shift("wrong-core", prior, 0, new Spread(0, OhmScatter), evidence);
        yield return core with
        {
            Weight = 0.3 * prior,
            Henry = new Spread(bare, 0.04),
            Quality = new Spread(bare + Math.Log(evidence.AcOverDc), 0.15),
        };
        yield return core with
        {
            Weight = 0.4 * prior,
            Henry = new Spread(0, 0.15),
            Quality = new Spread(0, 0.3),
        };
        yield return core with
        {
            Weight = 0.3 * prior,
            Henry = new Spread(0.6, 0.25),
            Quality = new Spread(-0.2, 0.5),
        };
    }

    /// <summary>
    /// A range, a lead or a zero: one of the readings is off and the others are not; one time in five all of them, for a reason that is
    /// none of the others.
    /// </summary>
    private static IEnumerable<Term> Meters(double prior)
    {
        Term right = new("meter-error", prior, 0, new Spread(0, OhmScatter), s_steady, new Spread(0, QualityScatter), s_counted)
        {
            Again = new Spread(0, OhmScatter),
        };
        yield return right with
        {
            Weight = 0.15 * prior,
            Ohm = new Spread(0, 1.2),
        };
        yield return right with
        {
            Weight = 0.2 * prior,
            Ohm = new Spread(0, 1.2),
            Henry = new Spread(0, 0.7),
            Quality = new Spread(0, 0.7),
        };
        yield return right with
        {
            Weight = 0.1 * prior,
            Ohm = new Spread(Math.Log(10), 0.02),
        };
        yield return right with
        {
            Weight = 0.1 * prior,
            Ohm = new Spread(-Math.Log(10), 0.02),
        };
        yield return right with
        {
            Weight = 0.05 * prior,
            Ohm = new Spread(Math.Log(1000), 0.02),
        };
        yield return right with
        {
            Weight = 0.05 * prior,
            Ohm = new Spread(-Math.Log(1000), 0.02),
        };
        yield return right with
        {
            Weight = 0.2 * prior,
            Henry = new Spread(0, 0.7),
        };
        yield return right with
        {
            Weight = 0.15 * prior,
            Quality = new Spread(0, 0.7),
        };
    }

    /// <summary>
    /// A break bridged by the coil's own capacitance or by dirt: from 0.26 MΩ, or ten times its ohms, to 20 MΩ, even in the logarithm.
    /// </summary>
    private static IEnumerable<Term> Broken(double prior, CoilEvidence evidence)
    {
        const int Count = 24;
        return Steps(Math.Max(LeastLeakageOhm, 10 * evidence.NominalOhm), Math.Max(2e7, 100 * evidence.NominalOhm), Count)
            .Select(ohm => new Term(
                "broken-coupled",
                prior / Count,
                0,
                new Spread(Math.Log(ohm / evidence.NominalOhm), 0.15),
                new Spread(0, 3),
                new Spread(-1, 2),
                s_counted
            )
            {
                FollowsBatch = false,
            });
    }

    private static IEnumerable<Term> Connections(CoilEvidence evidence)
    {
        if (evidence.CoilsInSeries >= 2)
        {
            double coils = evidence.CoilsInSeries,
                left = Math.Log((coils - 1) / coils),
                parallel = -2 * Math.Log(coils);
            yield return new Term(
                "coil-bridged",
                0.01,
                0,
                new Spread(left, 0.03),
                new Spread(left - 0.1, 0.15),
                new Spread(0, 0.3),
                s_counted
            );
            yield return new Term(
                "wired-parallel",
                0.005,
                0,
                new Spread(parallel, 0.03),
                new Spread(parallel, 0.15),
                new Spread(0, 0.3),
                s_counted
            );
        }
    }

    private static IEnumerable<double> Steps(double from, double to, int count) =>
        Enumerable.Range(0, count).Select(n => from * Math.Pow(to / from, n / (count - 1.0)));

    private static double Root(double a, double b) => Math.Sqrt(a * a + b * b);

    private static double Bell(double x) => Math.Exp(-0.5 * x * x);
}
