using System.Numerics;

namespace Coilwright.Analysis.Diagnosis;

/// <summary>Causes that lie in the reading, in the connection, or in what stands inside the coil.</summary>
internal static class ReadingCauses
{
    /// <summary>Least that a meter shows through a broken wire, Ω: a rule of thumb, common practice, no source.</summary>
    private const double LeastLeakageOhm = 2.6e5;

    /// <summary>
    /// A range, a lead or a zero: one of the readings is off and the others are not; one time in six all of them, for a reason that is none
    /// of the others.
    /// </summary>
    public static IEnumerable<CauseTerm> Meters(CoilEvidence evidence)
    {
        CauseTerm right = new() { Weight = 0, Again = new LogSpread(0, CauseTerm.OhmScatter) };
        foreach ((double decades, double share) in new[] { (1, 0.14), (-1, 0.14), (3, 0.06), (-3, 0.08), (2.0, 0.02), (-2, 0.02) })
        {
            yield return right with
            {
                Weight = share,
                Ohm = new LogSpread(decades * Math.Log(10), 0.02),
            };
        }

        yield return right with
        {
            Weight = 0.08,
            Ohm = new LogSpread(0, 1.2),
        };
        yield return right with
        {
            Weight = 0.18,
            Ohm = new LogSpread(0, 1.2),
            Henry = new LogSpread(0, 0.7),
            Quality = new LogSpread(0, 0.7),
        };
        yield return right with
        {
            Weight = 0.04,
            Henry = new LogSpread(Math.Log(10), 0.02),
        };
        yield return right with
        {
            Weight = 0.04,
            Henry = new LogSpread(-Math.Log(10), 0.02),
        };
        yield return right with
        {
            Weight = 0.12,
            Henry = new LogSpread(0, 0.7),
        };
        yield return right with
        {
            Weight = 0.08,
            Quality = new LogSpread(0, 0.7),
        };
    }

    /// <summary>
    /// A way round the coil, from 20 kΩ to 2 MΩ: a finger across both clips, flux on the leads. It lies across every reading, or across the
    /// ohms alone.
    /// </summary>
    public static IEnumerable<CauseTerm> Across(CoilEvidence evidence)
    {
        const int Count = 60;
        const double OhmsAlone = 0.15;
        foreach (double ohm in WireCauses.Steps(2e4, 2e6, Count))
        {
            double path = ohm / evidence.NominalOhm,
                shift = -Math.Log(1 + 1 / path);
            (double henry, double henryStep) = Seen(path, evidence.ReactanceAtInductance, 1).Henry;
            (double quality, double qualityStep) = Seen(path, evidence.ReactanceAtQuality, evidence.AcOverDc).Quality;
            CauseTerm all = new()
            {
                Weight = (1 - OhmsAlone) / Count,
                Size = ohm,
                Ohm = new LogSpread(shift, LogSpread.Root(CauseTerm.OhmScatter, 0.04 * shift)),
                Henry = new LogSpread(henry, LogSpread.Root(CauseTerm.HenryScatter, henryStep)),
                Quality = new LogSpread(quality, LogSpread.Root(CauseTerm.QualityScatter, qualityStep)),
                Again = new LogSpread(0, CauseTerm.OhmScatter),
            };
            yield return all;
            yield return all with
            {
                Weight = OhmsAlone / Count,
                Henry = new LogSpread(0, CauseTerm.HenryScatter),
                Quality = new LogSpread(0, CauseTerm.QualityScatter),
            };
        }
    }

    /// <summary>
    /// ln of L and of Q over the good coil's with a resistance across it, each with what half a step of the size moves it by.
    /// </summary>
    private static ((double Mean, double Step) Henry, (double Mean, double Step) Quality) Seen(
        double path,
        double reactance,
        double acOverDc
    )
    {
        if (reactance < 1e-6)
        {
            return ((0, 0), (0, 0));
        }

        (double henry, double quality) = At(path);
        (double henryNext, double qualityNext) = At(1.04 * path);
        return ((henry, henryNext - henry), (quality, LogSpread.Root(qualityNext - quality, 0.05 * quality)));

        (double Henry, double Quality) At(double across)
        {
            Complex own = new(acOverDc, reactance),
                seen = own * across / (own + across);
            return (Math.Log(seen.Imaginary / reactance), Math.Log(seen.Imaginary / seen.Real * acOverDc / reactance));
        }
    }

    /// <summary>Another alloy, steel for a magnet, or no core at all: ohms as they were, henries not.</summary>
    public static IEnumerable<CauseTerm> Cores(CoilEvidence evidence)
    {
        double bare = Math.Log(Math.Clamp(evidence.AirRatio, 0.2, 0.97)),
            eddy = Math.Log(evidence.AcOverDc);
        yield return new CauseTerm
        {
            Weight = 0.35,
            Henry = new LogSpread(bare, 0.04),
            Quality = new LogSpread(bare + eddy, 0.2),
        };
        yield return new CauseTerm
        {
            Weight = 0.35,
            Henry = new LogSpread(0.6 * bare, 0.3 * Math.Abs(bare) + 0.03),
            Quality = new LogSpread(0, 0.4),
        };
        yield return new CauseTerm
        {
            Weight = 0.3,
            Henry = new LogSpread(0.4, 0.25),
            Quality = new LogSpread(-0.2, 0.5),
        };
    }

    /// <summary>
    /// A break bridged by the coil's own capacitance or by dirt: from 0.26 MΩ, or ten times its ohms, to 20 MΩ, even in the logarithm.
    /// </summary>
    public static IEnumerable<CauseTerm> Broken(CoilEvidence evidence)
    {
        const int Count = 24;
        return WireCauses
            .Steps(Math.Max(LeastLeakageOhm, 10 * evidence.NominalOhm), Math.Max(2e7, 100 * evidence.NominalOhm), Count)
            .Select(ohm => new CauseTerm
            {
                Weight = 1.0 / Count,
                Ohm = new LogSpread(Math.Log(ohm / evidence.NominalOhm), 0.15),
                Henry = new LogSpread(0, 3),
                Quality = new LogSpread(-1, 2),
                FollowsBatch = false,
            });
    }

    /// <summary>One of several coils in series is shorted out.</summary>
    public static IEnumerable<CauseTerm> Bridged(CoilEvidence evidence)
    {
        double coils = evidence.CoilsInSeries,
            left = Math.Log((coils - 1) / coils);
        return Joined(evidence, left, left - 0.1);
    }

    /// <summary>Coils that belong in series lie side by side.</summary>
    public static IEnumerable<CauseTerm> Parallel(CoilEvidence evidence)
    {
        double all = -2 * Math.Log(evidence.CoilsInSeries);
        return Joined(evidence, all, all);
    }

    private static IEnumerable<CauseTerm> Joined(CoilEvidence evidence, double ohm, double henry) =>
        evidence.CoilsInSeries < 2
            ? []
            :
            [
                new CauseTerm
                {
                    Weight = 1,
                    Ohm = new LogSpread(ohm, 0.03),
                    Henry = new LogSpread(henry, 0.15),
                    Quality = new LogSpread(0, 0.3),
                },
            ];
}
