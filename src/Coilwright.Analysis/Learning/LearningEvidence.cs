using MathNet.Numerics.Distributions;

namespace Coilwright.Analysis.Learning;

/// <summary>Coils that have what matters in common, and whether they read other than forecast.</summary>
/// <param name="Effects">What they have in common.</param>
/// <param name="Coils">How many.</param>
/// <param name="Good">How many count as good.</param>
/// <param name="Mean">Mean of ln of measured over forecast.</param>
/// <param name="Half">Half-width of its 95 % interval.</param>
/// <param name="Probability">Probability of a mean so far off by chance alone, were the forecast true.</param>
public sealed record EvidenceGroup(IReadOnlyList<Effect> Effects, int Coils, double Good, double Mean, double Half, double Probability)
{
    /// <summary>True when the readings show that the forecast is off.</summary>
    public bool IsOff { get; init; }
}

/// <summary>Whether readings show at all that forecasts are off; all groups of a shop together are wrong in at most 2 % of shops.</summary>
public static class LearningEvidence
{
    /// <summary>Part of shops without any bias for which something is proposed, at most. Our choice.</summary>
    public const double FalseAlarm = 0.02;

    /// <summary>Fewer coils say nothing. Our assumption.</summary>
    private const int Fewest = 5;

    /// <summary>Every group of every quantity, with those marked that are off.</summary>
    /// <param name="quantities">
    /// What was learnt, each with the kinds of effect that coils are grouped by, and the least deviation that is more than a meter's own.
    /// </param>
    /// <remarks>Student's t for each, and Holm's steps over all of them [Holm1979].</remarks>
    public static IReadOnlyList<IReadOnlyList<EvidenceGroup>> Find(
        IReadOnlyList<(LearntQuantity Learnt, IReadOnlyList<EffectKind> By, double Least)> quantities
    )
    {
        EvidenceGroup[][] found = [.. quantities.Select(one => Groups(one.Learnt, one.By))];
        EvidenceGroup[] ordered = [.. found.SelectMany(groups => groups).Where(Counts).OrderBy(group => group.Probability)];
        HashSet<EvidenceGroup> off = [];
        for (int k = 0; k < ordered.Length && ordered[k].Probability <= FalseAlarm / (ordered.Length - k); k++)
        {
            off.Add(ordered[k]);
        }

        return
        [
            .. found.Zip(quantities, (groups, one) =>
                groups.Select(group => group with { IsOff = off.Contains(group) && Math.Abs(group.Mean) >= one.Least }).ToArray()
            ),
        ];
    }

    private static bool Counts(EvidenceGroup group) => group.Good >= Fewest;

    private static EvidenceGroup[] Groups(LearntQuantity learnt, IReadOnlyList<EffectKind> by)
    {
        IGrouping<string, (Effect[] Effects, LearningCell Cell)>[] groups =
        [
            .. learnt
                .Cells.Where(cell => cell.Coils > 0)
                .Select(cell => (cell.Effects.Select(one => one.Effect).Where(one => by.Contains(one.Kind)).ToArray(), cell))
                .GroupBy(cell => string.Join('\u001f', cell.Item1), StringComparer.Ordinal),
        ];
        double freedom = Math.Max(1, learnt.CoilFreedom - groups.Length);
        return
        [
            .. groups.Select(group =>
            {
                LearningCell[] cells = [.. group.Select(one => one.Cell)];
                double precision = cells.Sum(cell => cell.Precision),
                    mean = cells.Sum(cell => cell.Precision * cell.Mean) / precision,
                    deviation = Math.Sqrt(learnt.CoilVariance / Math.Max(1e-9, cells.Sum(cell => cell.Good)));
                return new EvidenceGroup(
                    group.First().Effects,
                    cells.Sum(cell => cell.Coils),
                    cells.Sum(cell => cell.Good),
                    mean,
                    StudentT.InvCDF(0, 1, freedom, 0.975) * deviation,
                    2 * StudentT.CDF(0, 1, freedom, -Math.Abs(mean) / deviation)
                );
            }),
        ];
    }
}
