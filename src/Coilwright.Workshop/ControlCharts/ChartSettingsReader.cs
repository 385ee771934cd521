using System.Globalization;
using Coilwright.Analysis.Charts;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.ControlCharts;

/// <summary>Reads what was chosen on the wall; every problem at once.</summary>
internal sealed class ChartSettingsReader
{
    private readonly List<Problem> _problems = [];

    public ChartSettingsReader(ChartSettingsForm form, int spindles)
    {
        Coils = Whole("last", form.Last, 200, 2, ChartSettings.MostCoils);
        Question = new ChartSettings
        {
            Quantity = Choice("quantity", form.Quantity, [.. ChartSettings.Quantities.Select(key => (key, key))]),
            Frozen = Choice("limits", form.Limits, [("frozen", true), ("running", false)]),
            LimitsFrom = Whole("from", form.From, IndividualsChart.UsualBase, 2, 10_000),
            Subgroup = Whole("group", form.Group, spindles is >= 2 and <= 50 ? spindles : 1, 1, 50),
            Spread = Choice("spread", form.Spread, [("range", SubgroupSpread.Range), ("deviation", SubgroupSpread.StandardDeviation)]),
            Rules = Choice<Func<RuleSet>>(
                "rules",
                form.Rules,
                [("western-electric", () => RuleSet.WesternElectric), ("nelson", () => RuleSet.Nelson)]
            )(),
            Lambda = Number("lambda", form.Lambda, 0.2, 0.01, 1),
            Allowance = Number("allowance", form.Allowance, 0.5, 0, 3),
            Decision = Number("decision", form.Decision, 5, 0.5, 20),
            Sides = Choice(
                "sides",
                form.Sides,
                [("both", SpecificationSides.Both), ("lower", SpecificationSides.LowerOnly), ("upper", SpecificationSides.UpperOnly)]
            ),
            Shape = Choice(
                "shape",
                form.Shape,
                [
                    ("normal", DistributionModel.Normal),
                    ("log-normal", DistributionModel.LogNormal),
                    ("as-they-lie", DistributionModel.Empirical),
                ]
            ),
        };
        if (form.Since.Trim().Length > 0 && form.Why.Trim().Length == 0)
        {
            _problems.Add(new Problem("why", "limits are taken anew only on purpose: say why", null, "a few words"));
        }
    }

    public ChartSettings Question { get; }

    /// <summary>How many of the last coils are drawn.</summary>
    public int Coils { get; }
    public IReadOnlyList<Problem> Problems => _problems;

    private T Choice<T>(string field, string typed, (string Word, T Value)[] choices)
    {
        string word = typed.Trim();
        foreach ((string known, T value) in choices)
        {
            if (word.Length == 0 || string.Equals(known, word, StringComparison.OrdinalIgnoreCase))
            {
                return value;
            }
        }

        _problems.Add(new Problem(field, "this is none of the choices", word, string.Join(", ", choices.Select(choice => choice.Word))));
        return choices[0].Value;
    }

    private int Whole(string field, string typed, int usual, int least, int most) =>
        (int)Read(field, typed, usual, least, most, whole: true);

    private double Number(string field, string typed, double usual, double least, double most) =>
        Read(field, typed, usual, least, most, whole: false);

    private double Read(string field, string typed, double usual, double least, double most, bool whole)
    {
        string text = typed.Trim();
        if (text.Length == 0)
        {
            return usual;
        }

        double value = whole && CountParser.TryParse(text, int.MinValue, int.MaxValue, out int count, out _) ? count : double.NaN;
        bool read = whole ? double.IsFinite(value) : CountParser.TryNumber(text, out value);
        if (read && value >= least && value <= most)
        {
            return value;
        }

        string notRead = whole ? "this is not a whole number" : "this is not a number";
        string why = read ? "this is outside what is allowed" : notRead;
        _problems.Add(new Problem(field, why, text, string.Create(CultureInfo.InvariantCulture, $"{least:#,##0.##} to {most:#,##0.##}")));
        return usual;
    }
}
