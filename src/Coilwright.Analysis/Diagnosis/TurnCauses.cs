using System.Globalization;

namespace Coilwright.Analysis.Diagnosis;

/// <summary>Causes that change how many turns the meter sees: a wrong count, and turns that are shorted.</summary>
internal static class TurnCauses
{
    /// <summary>Turns that a tired hand leaves out or adds.</summary>
    private static readonly double[] s_roundNumbers = [100, 200, 500, 1000, 2000];

    /// <summary>Half of all wrong counts are off by some per cent; the other half is a slip that has a reason.</summary>
    private const double Slips = 0.5;

    /// <summary>Turns off by some per cent, or half, double, a digit or a round number dropped, or stopped early anywhere.</summary>
    public static IEnumerable<CauseTerm> Miscounts(CoilEvidence evidence)
    {
        const double Wide = 0.07;
        double[] sizes = [.. Enumerable.Range(-45, 91).Where(n => n != 0).Select(n => n * 0.004)];
        double total = sizes.Sum(size => WireCauses.Bell(size / Wide));
        foreach (
            (double size, double share) in sizes
                .Select(size => (size, (1 - Slips) * WireCauses.Bell(size / Wide) / total))
                .Concat(SlipsOf(evidence.NominalTurns).Select(one => (one.Size, Slips * one.Share)))
        )
        {
            CauseTerm unseen = OfTurns(size, share, evidence);
            if (evidence.TurnsRatio is null)
            {
                yield return unseen;
                continue;
            }

            yield return unseen with
            {
                Weight = share / 2,
            };
            yield return unseen with
            {
                Weight = share / 2,
                Turns = new LogSpread(Math.Log(1 + size), 0.002),
            };
        }
    }

    /// <summary>
    /// L goes as the square, R a little more than in proportion because the outer turns are longer; both the less surely the more turns are
    /// missing. Q follows from both, from the eddy losses, which go as L, and from how near the coil's own resonance comes.
    /// </summary>
    private static CauseTerm OfTurns(double size, double weight, CoilEvidence evidence)
    {
        const double Near = 0.25; // how well ω²LC is known, a part of one
        double shift = Math.Log(1 + size),
            dc = 1 / evidence.AcOverDc;
        double near = Math.Clamp(evidence.NearnessAtQuality, 0, 0.5),
            nearer = Math.Min(0.95, near * Math.Exp(2 * shift));
        double doubt = Near * (nearer / (1 - nearer) - near / (1 - near)),
            quality =
                2 * shift - Math.Log(dc * Math.Exp(1.05 * shift) + (1 - dc) * Math.Exp(2 * shift)) + Math.Log((1 - nearer) / (1 - near));
        return new CauseTerm
        {
            Weight = weight,
            Size = size,
            Ohm = new LogSpread(1.05 * shift, LogSpread.Root(CauseTerm.OhmScatter, 0.03 * shift)),
            Henry = new LogSpread(1.97 * shift, LogSpread.Root(CauseTerm.HenryScatter, 0.08 * shift)),
            Quality = new LogSpread(quality, LogSpread.Root(LogSpread.Root(CauseTerm.QualityScatter, 0.15 * shift), doubt)),
            TrueTurns = shift,
        };
    }

    /// <summary>Slips of the count: half, double, a digit of the number dropped, a round number left out or added, stopped early.</summary>
    private static IEnumerable<(double Size, double Share)> SlipsOf(double turns)
    {
        yield return (-0.5, 0.25);
        yield return (1, 0.2);
        double[] digits = [.. DigitsDropped(turns)],
            round =
            [.. s_roundNumbers.SelectMany(off => new[] { -off / turns, off / turns }).Where(size => turns > 0 && size is > -0.9 and <= 1)],
            early = [.. Enumerable.Range(0, 40).Select(n => -0.15 - 0.02 * n)];
        foreach (double size in digits)
        {
            yield return (size, 0.2 / digits.Length);
        }

        foreach (double size in round)
        {
            yield return (size, 0.25 / round.Length);
        }

        foreach (double size in early)
        {
            yield return (size, (0.1 + (digits.Length == 0 ? 0.2 : 0) + (round.Length == 0 ? 0.25 : 0)) / early.Length);
        }
    }

    /// <summary>800, 500… for 8,500: parts of the turns that are missing when one digit of the number was not set.</summary>
    private static IEnumerable<double> DigitsDropped(double turns)
    {
        string number = turns >= 100 ? turns.ToString("0", CultureInfo.InvariantCulture) : "";
        return Enumerable
            .Range(0, number.Length)
            .Select(place => double.Parse("0" + number.Remove(place, 1), CultureInfo.InvariantCulture) / turns - 1)
            .Where(size => size > -0.99)
            .Distinct();
    }

    /// <summary>
    /// From a few turns to nearly all: even in the logarithm up to a fifth, then falling with the square, for what bridges lies side by
    /// side.
    /// </summary>
    public static IEnumerable<CauseTerm> Shorts(CoilEvidence evidence)
    {
        const double Usual = 0.2;
        double[] parts = [.. WireCauses.Steps(0.0012, 0.97, 90), 0.99, 0.999],
            tightness = [1.1, 1.25, 1.4]; // turns side by side, or all through the winding: nobody knows which
        double Share(double part) => part <= Usual ? 1 : Usual * Usual / part / part;
        double total = parts.Sum(Share) * tightness.Length;
        foreach ((double part, double tight) in parts.SelectMany(part => tightness.Select(tight => (part, tight))))
        {
            (double henry, _) = ShortedTurns.Shift(part, evidence.ReactanceAtInductance, tightness: tight);
            (_, double quality) = ShortedTurns.Shift(part, evidence.ReactanceAtQuality, evidence.AcOverDc, tight);
            yield return new CauseTerm
            {
                Weight = Share(part) / total,
                Size = part,
                Ohm = new LogSpread(Math.Log(1 - part), CauseTerm.OhmScatter + 0.05 * part),
                Henry = new LogSpread(henry, LogSpread.Root(CauseTerm.HenryScatter, 0.05 * henry)),
                Quality = new LogSpread(quality, LogSpread.Root(CauseTerm.QualityScatter, 0.07 * quality)),
            };
        }
    }
}
