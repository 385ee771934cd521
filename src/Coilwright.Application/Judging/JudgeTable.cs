using Coilwright.Analysis.Quantities;
using Coilwright.Formats.Judgements;
using Coilwright.Formats.Tables;
using Coilwright.Workshop.ControlCharts;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Application.Judging;

/// <summary>A person has a table of coils judged against a recipe.</summary>
public sealed class JudgeTable
{
    /// <summary>Judges every line of a table.</summary>
    /// <param name="recipe">The recipe.</param>
    /// <param name="rows">The table.</param>
    /// <param name="asked">How.</param>
    public TableJudgement Judge(Recipe recipe, IReadOnlyList<ReadingRow> rows, TableQuestion asked)
    {
        VerdictLimits limits = Limits(recipe, asked.Coil, rows) with { MeterPart = asked.MeterPart };
        (string Spool, IReadOnlyList<ReadingRecord> Readings)[] readings = [.. rows.Select(row => (row.Spool, row.Readings))];
        IReadOnlyList<ReadingRecord>? golden = rows.FirstOrDefault(row =>
            string.Equals(row.Tag, asked.GoldenTag, StringComparison.OrdinalIgnoreCase)
        )?.Readings;
        JudgedBatch judged = BatchJudgement.JudgeAll(limits, readings, golden);
        JudgedPiece[] pieces = [.. rows.Zip(judged.Verdicts, (row, verdict) => new JudgedPiece(row.Tag, verdict, row.Carried))];
        return new TableJudgement(
            pieces,
            BatchChart.Of(pieces.Select(piece => (piece.Tag, piece.Verdict))),
            asked.Subgroup is { } group ? ChartsOf(pieces, limits, group) : null,
            judged.Remarks
        );
    }

    /// <summary>The charts of the coils as judged: the rejected ones are known already and left out.</summary>
    private static ControlChart? ChartsOf(IReadOnlyList<JudgedPiece> pieces, VerdictLimits limits, int group) =>
        ControlChartBuilder.Build(
            new ChartSettings { Subgroup = group },
            [
                .. pieces
                    .Where(piece => piece.Verdict.DcResistanceAt20C is not null)
                    .Select(piece => new ChartedCoil(piece.Tag, piece.Verdict.DcResistanceAt20C!.Value.Value)
                    {
                        LeftOut = !BatchChart.Counts(piece.Verdict),
                    }),
            ],
            limits.Resistance
        );

    /// <summary>
    /// Readings of a pickup with several coils are of the whole, unless a coil is named or most of them fit the first coil alone.
    /// </summary>
    private static VerdictLimits Limits(Recipe recipe, int? coil, IReadOnlyList<ReadingRow> rows)
    {
        if (coil is not null || recipe.Coils.Count == 1)
        {
            return VerdictLimits.ForCoil(recipe, coil ?? 0);
        }

        VerdictLimits whole = VerdictLimits.ForPickup(recipe),
            first = VerdictLimits.ForCoil(recipe, 0);
        double[] ohms =
        [
            .. rows.SelectMany(row => row.Readings)
                .Where(reading => reading is { Quantity: QuantityKey.DcResistance, Si: > 0 })
                .Select(reading => reading.Si!.Value),
        ];
        const double Near = 0.15;
        bool areCoils = ohms.Length >= 3 && ohms.Count(ohm => Math.Abs(ohm / first.Resistance.Nominal - 1) < Near) > 2 * ohms.Length / 3;
        return areCoils ? first : whole;
    }
}
