using System.Globalization;

namespace Coilwright.Analysis.Diagnosis;

/// <summary>Collects what the coils of a batch have in common.</summary>
/// <param name="batch">Every coil, in the order they were wound.</param>
internal sealed class BatchFindings(IReadOnlyList<CoilEvidence> batch)
{
    /// <summary>Less than this is not worth telling, in logarithms. Our assumption.</summary>
    private const double Least = 0.02,
        LeastDrift = 0.012;

    /// <summary>Fewer coils do not tell a drift. Our assumption.</summary>
    private const int FewestForDrift = 8;

    private readonly List<BatchFinding> _found = [];

    /// <summary>What the inductance is off by for all coils, ln, where that is more than chance; null otherwise.</summary>
    private readonly double? _henry = WholeBatch.InductanceOff([
        .. batch.Where(coil => !coil.Open).Select(OverWanted).OfType<double>().Where(one => one > 0).Select(one => Math.Log(one)),
    ]);
    private bool _isCounter;

    /// <summary>What is off for all of a spool's coils.</summary>
    /// <param name="spool">What was learnt of it.</param>
    /// <param name="measured">Places of its coils that were read.</param>
    public void Add(SpoolLearning spool, int[] measured)
    {
        int[] ohms = [.. measured.Where(n => batch[n].OhmAt20C is > 0)];
        if (ohms.Length < CommonOffset.Fewest)
        {
            return;
        }

        string label = batch[measured[0]].Spool;
        (int place, double changed) = spool.Run.Change;
        bool isChanged = changed > 0.5 && place < spool.Learnt.Count;
        (double offset, double deviation) = spool.Run.Offset(0, isChanged ? place : spool.Learnt.Count);
        if (Math.Abs(offset) >= Math.Max(Least, 3 * deviation))
        {
            _found.Add(Offset(offset, deviation, ohms.Length, label));
        }

        if (isChanged)
        {
            (double later, double laterDeviation) = spool.Run.Offset(place, spool.Learnt.Count);
            double step = later - offset;
            string side = step > 0 ? "more" : "less";
            _found.Add(
                new BatchFinding(
                    "wire-changed",
                    $"the coils read {Percent(step)} % {side} ohms than before: a change of spool that nobody noted, or of the set-up",
                    $"{place} coils before, {spool.Learnt.Count - place} from here on; their middles are known to "
                        + $"{Percent(2 * LogSpread.Root(deviation, laterDeviation), 1)} %",
                    "measure 10 m off the spool that is on, and look at the tension"
                )
                {
                    From = spool.Learnt[place],
                    Spool = label,
                }
            );
        }
        else if (Drift(ohms) is { } drift)
        {
            _found.Add(drift with { Spool = label });
        }
    }

    /// <summary>All of it; the inductance first, for it is about every coil.</summary>
    public IReadOnlyList<BatchFinding> Found()
    {
        if (_henry is not { } off || _isCounter)
        {
            return _found;
        }

        bool target = batch.Any(coil => coil.InductanceHasTarget);
        string side = off > 0 ? "over" : "under",
            wanted = target ? "target" : "forecast",
            causes = target ? "target, meter or magnets" : "meter or magnets",
            percent = (Math.Abs(Math.Exp(off) - 1) * 100).ToString("0", CultureInfo.InvariantCulture);
        return
        [
            new BatchFinding(
                "inductance-off",
                $"the whole batch reads about {percent} % {side} the {wanted} inductance: {causes}, not single coils",
                $"middle of {batch.Count(coil => OverWanted(coil) is > 0)} coils; the ohms did not move with it as turns would move both",
                "read a coil of known inductance on the same meter at the same frequency"
            ),
            .. _found,
        ];
    }

    private static double? OverWanted(CoilEvidence coil) => coil.InductanceOverWanted ?? coil.InductanceRatio;

    private BatchFinding Offset(double offset, double deviation, int coils, string label)
    {
        string side = offset > 0 ? "more" : "less",
            evidence = $"middle of {coils} coils, known to {Percent(2 * deviation, 1)} %";
        if (_henry is { } henry && WholeBatch.AsTurns(offset, henry))
        {
            _isCounter = true;
            string other = henry > 0 ? "more" : "less";
            return new BatchFinding(
                "turns-off",
                $"the whole batch reads about {Percent(offset)} % {side} ohms and {Percent(henry)} % {other} inductance "
                    + "than wanted, as turns move both: the counter, not single coils",
                evidence,
                "check the counter with a marked test"
            )
            {
                Spool = label,
            };
        }

        string wire = offset > 0 ? "thin wire" : "thick wire",
            whose = label.Length > 0 ? $"the wire of spool {label}" : "the wire";
        return new BatchFinding(
            "wire-off",
            $"{whose} reads about {Percent(offset)} % {side} ohms than wanted in every coil: {wire}, or the tension; not single coils",
            evidence,
            "measure 10 m off the spool"
        )
        {
            Spool = label,
        };
    }

    /// <summary>
    /// A straight line through the ohms in the order of winding, far-off coils left out; null where it is as good as level.
    /// </summary>
    private BatchFinding? Drift(int[] ohms)
    {
        double[] logs = [.. ohms.Select(n => Math.Log(batch[n].OhmAt20C!.Value / batch[n].NominalOhm))];
        double middle = WholeBatch.Median(logs),
            wide = Math.Max(0.03, 4 * 1.4826 * WholeBatch.Median([.. logs.Select(log => Math.Abs(log - middle))]));
        (double X, double Y)[] near = [.. logs.Select((y, x) => ((double)x, y)).Where(one => Math.Abs(one.y - middle) <= wide)];
        if (near.Length < FewestForDrift)
        {
            return null;
        }

        double meanX = near.Average(one => one.X),
            meanY = near.Average(one => one.Y),
            square = near.Sum(one => (one.X - meanX) * (one.X - meanX));
        double slope = near.Sum(one => (one.X - meanX) * (one.Y - meanY)) / square,
            left = near.Sum(one => Math.Pow(one.Y - meanY - slope * (one.X - meanX), 2)) / (near.Length - 2),
            error = Math.Sqrt(Math.Max(left, CauseTerm.OhmScatter * CauseTerm.OhmScatter / 4) / square),
            run = slope * (ohms.Length - 1);
        if (Math.Abs(run) < LeastDrift || Math.Abs(slope) < 5 * error)
        {
            return null;
        }

        string side = run > 0 ? "up" : "down",
            times = (Math.Abs(slope) / error).ToString("0.#", CultureInfo.InvariantCulture);
        return new BatchFinding(
            "drift",
            $"the ohms drift {side} by about {Percent(run)} % from the first coil to the last",
            $"a straight line through {near.Length} coils, {times} times its own error",
            "temperature and meter zero; then the tension"
        );
    }

    private static string Percent(double log, int digits = 0) =>
        (Math.Abs(Math.Exp(log) - 1) * 100).ToString(digits == 0 && Math.Abs(log) >= 0.095 ? "0" : "0.#", CultureInfo.InvariantCulture);
}
