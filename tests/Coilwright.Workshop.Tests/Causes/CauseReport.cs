using System.Globalization;
using System.Text;
using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop.Tests.Causes;

/// <summary>What came of a run, in figures.</summary>
internal static class CauseReport
{
    public static double First(IEnumerable<JudgedCoil> coils) => Share(Ranked(coils), coil => coil.IsRight);

    public static double AmongTwo(IEnumerable<JudgedCoil> coils) => Share(Ranked(coils), coil => coil.IsAmongTwo);

    public static double BestFirst(IEnumerable<JudgedCoil> coils) =>
        Share(Ranked(coils), coil => coil.Best.Count > 0 && coil.Best[0] == coil.Coil.Cause);

    public static double BestAmongTwo(IEnumerable<JudgedCoil> coils) =>
        Share(Ranked(coils), coil => coil.Best.Take(2).Contains(coil.Coil.Cause));

    /// <summary>Of the kinds that are ranked.</summary>
    public static IEnumerable<JudgedCoil> Ranked(IEnumerable<JudgedCoil> coils) =>
        coils.Where(coil => coil.Coil.Kind.Length > 0 && !FaultRanges.NotRanked.Contains(coil.Coil.Kind));

    public static double Share(IEnumerable<JudgedCoil> coils, Func<JudgedCoil, bool> which)
    {
        JudgedCoil[] all = [.. coils];
        return all.Length == 0 ? 0 : (double)all.Count(which) / all.Length;
    }

    /// <summary>Faulty coils whose first cause is claimed between two probabilities: claimed on average, right, how many.</summary>
    public static (double Claimed, double Right, int Count) Calibration(IEnumerable<JudgedCoil> coils, double low, double high)
    {
        JudgedCoil[] bin =
        [
            .. coils.Where(coil =>
                coil.First.Length > 0 && coil.First != "none" && coil.Verdict.Causes[0].Probability is var p && p >= low && p < high
            ),
        ];
        return bin.Length == 0
            ? (0, 0, 0)
            : (bin.Average(coil => coil.Verdict.Causes[0].Probability), Share(bin, coil => coil.IsRight), bin.Length);
    }

    /// <summary>Deciles of at least fifty cases that lie outside of their binomial band (95 %).</summary>
    public static IReadOnlyList<string> OutsideBand(IEnumerable<JudgedCoil> coils)
    {
        JudgedCoil[] all = [.. coils];
        List<string> outside = [];
        for (int decile = 0; decile < 10; decile++)
        {
            (double claimed, double right, int count) = Calibration(all, decile / 10.0, decile == 9 ? 1.01 : (decile + 1) / 10.0);
            double band = 1.96 * Math.Sqrt(claimed * (1 - claimed) / Math.Max(1, count)) + 0.5 / Math.Max(1, count);
            if (count >= 50 && Math.Abs(right - claimed) > band)
            {
                outside.Add(FormattableString.Invariant($"claimed {claimed:0.000}, right {right:0.000} of {count}, band ±{band:0.000}"));
            }
        }

        return outside;
    }

    public static string Text(string title, IReadOnlyList<JudgedCoil> coils)
    {
        StringBuilder text = new();
        _ = text.AppendLine(
            CultureInfo.InvariantCulture,
            $"{title}: first {First(coils):P1} (best {BestFirst(coils):P1}), among two {AmongTwo(coils):P1} (best {BestAmongTwo(coils):P1})"
        );
        foreach (IGrouping<string, JudgedCoil> kind in coils.GroupBy(coil => coil.Coil.Kind))
        {
            string said = string.Join(
                ", ",
                kind.GroupBy(coil => coil.First)
                    .OrderByDescending(group => group.Count())
                    .Take(4)
                    .Select(group => $"{group.Key} {group.Count()}")
            );
            _ = text.AppendLine(
                CultureInfo.InvariantCulture,
                $"  {kind.Key, -28} first {Share(kind, c => c.IsRight), 6:P0} two {Share(kind, c => c.IsAmongTwo), 6:P0} "
                    + $"best {Share(kind, c => c.Best.Count > 0 && c.Best[0] == c.Coil.Cause), 6:P0} "
                    + $"reject {Share(kind, c => c.Verdict.Kind == VerdictKind.Reject), 5:P0} "
                    + $"pass {Share(kind, c => c.Verdict.Kind == VerdictKind.Pass), 5:P0}  {said}"
            );
        }

        return text.ToString();
    }

    public static string Calibrations(string title, IReadOnlyList<JudgedCoil> coils)
    {
        StringBuilder text = new();
        _ = text.AppendLine(CultureInfo.InvariantCulture, $"{title}: {coils.Count} coils");
        for (int decile = 1; decile < 10; decile++)
        {
            (double claimed, double right, int count) = Calibration(coils, decile / 10.0, decile == 9 ? 1.01 : (decile + 1) / 10.0);
            _ = text.AppendLine(CultureInfo.InvariantCulture, $"  claimed {claimed:0.000} right {right:0.000} of {count}");
        }

        return text.ToString();
    }
}
