using System.Globalization;
using Coilwright.Analysis.Quantities;
using Coilwright.Analysis.Solving;
using Coilwright.Workshop.Quantities;
using Coilwright.Workshop.Solving;

namespace Coilwright.Papers.Formatting;

/// <summary>Wants in workshop words: what was understood, whether a recipe meets it, and which stands against which.</summary>
/// <param name="now">Quantities of the recipe asked about, by name: an output is told as a change against it.</param>
public sealed class WantFormatter(IReadOnlyDictionary<string, double> now)
{
    /// <summary>A want as it was understood: "DC resistance at least 8.20 kΩ".</summary>
    public string Words(Objective want) => $"{FigureFormatter.Name(want.Quantity)} {Wanted(want)}";

    /// <summary>How much of it is wanted: "at least 8.20 kΩ".</summary>
    public string Wanted(Objective want) =>
        want.Kind switch
        {
            ObjectiveKind.AtLeast => "at least " + Value(want.Quantity, want.Value),
            ObjectiveKind.AtMost => "at most " + Value(want.Quantity, want.Value),
            ObjectiveKind.Most => "as much as possible",
            ObjectiveKind.Least => "as little as possible",
            _ => $"from {Value(want.Quantity, want.Lowest)} to {Value(want.Quantity, want.Highest)}",
        };

    /// <summary>A value of a quantity: an output in decibels against the recipe asked about, all else in its unit.</summary>
    public string Value(string quantity, double si) =>
        quantity == QuantityKey.Output && now.TryGetValue(quantity, out double own)
            ? FigureFormatter.Value(20 * Math.Log10(si / own), "dB")
            : FigureFormatter.Value(si, UnitOf(quantity));

    /// <summary>What the recipe asked about has of it now; empty where it has none.</summary>
    public string Now(string quantity) => now.TryGetValue(quantity, out double own) && double.IsFinite(own) ? Value(quantity, own) : "";

    /// <summary>
    /// What a recipe that was found has of it, with its interval: "8.20 kΩ (7.98 kΩ – 8.41 kΩ)". The interval of an output is that of the
    /// output itself, which is wider than that of the change.
    /// </summary>
    public string Found(WantMark mark)
    {
        if (mark.Estimate is not { } found)
        {
            return "none";
        }

        string itself = mark.Want.Quantity == QuantityKey.Output ? "itself " : "";
        return $"{Value(mark.Want.Quantity, found.Value)} ({itself}{Value(mark.Want.Quantity, found.Low)} – "
            + $"{Value(mark.Want.Quantity, found.High)})";
    }

    /// <summary>Whether a recipe that was found meets it: "met", "met within its interval", "missed by 0.31 kΩ".</summary>
    public string State(WantMark mark) =>
        mark.State switch
        {
            WantState.Wished => "wanted " + Wanted(mark.Want),
            WantState.Met => "met",
            WantState.MetWithinInterval when mark.Bound is { } bound => $"met within its interval, {Off(mark, bound)} off",
            WantState.MetWithinInterval => "met within its interval",
            _ when mark.Bound is { } bound => "missed by " + Off(mark, bound),
            _ => "missed",
        };

    /// <summary>Which want stands against which, when nothing meets them all: a sentence for each want.</summary>
    public IReadOnlyList<string> Against(Solutions found, string ownBuild) =>
        [
            .. found.NearestEach.Select(nearest => Against(nearest, found.Wants, ownBuild)),
            .. found.Binding.Contains(QuantityKey.Fill) && !found.Wants.Any(want => want.Quantity == QuantityKey.Fill)
                ? ["The bobbin is full there: with more room on it, or thinner wire, it could be met."]
                : Array.Empty<string>(),
        ];

    private string Against(NearestToWant nearest, IReadOnlyList<Objective> wants, string ownBuild)
    {
        string where = ChangeFormatter.Words(nearest.Changes, ownBuild);
        string start = char.ToUpperInvariant(Words(nearest.Want)[0]) + Words(nearest.Want)[1..];
        if (nearest.Want.Miss(ValueOf(nearest, nearest.Want)) > 0)
        {
            return $"{start}: the nearest it came is {Told(nearest, nearest.Want)}, with {where}.";
        }

        Objective[] missed = [.. wants.Where(want => want.Miss(ValueOf(nearest, want)) > 0)];
        return missed.Length == 0
            ? $"{start}: met with {where}, but no forecast in full held it."
            : $"{start}: can be met, and then {string.Join("; ", missed.Select(want => Then(nearest, want)))}, with {where}.";
    }

    private string Then(NearestToWant nearest, Objective want) =>
        $"{FigureFormatter.Name(want.Quantity)} comes no nearer than {Told(nearest, want)} ({Wanted(want)} is wanted)";

    private string Told(NearestToWant nearest, Objective want) =>
        nearest.Values.ContainsKey(want.Quantity) ? Value(want.Quantity, ValueOf(nearest, want)) : "none at all";

    private static double ValueOf(NearestToWant nearest, Objective want) => nearest.Values.GetValueOrDefault(want.Quantity, double.NaN);

    /// <summary>How far the value lies beyond the end of the want.</summary>
    private static string Off(WantMark mark, double bound)
    {
        double value = mark.Estimate!.Value.Value;
        return mark.Want.Quantity == QuantityKey.Output
            ? Level(20 * Math.Log10(value / bound))
            : Distance(value - bound, UnitOf(mark.Want.Quantity));
    }

    private static string Distance(double off, string unit) => unit == "dB" ? Level(off) : FigureFormatter.Value(Math.Abs(off), unit, 2);

    private static string Level(double off) => Math.Abs(off).ToString("0.0#", CultureInfo.InvariantCulture) + " dB";

    private static string UnitOf(string quantity) => Quantity.FindResult(quantity)?.Unit ?? "";
}
