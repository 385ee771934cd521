using Coilwright.Analysis.Forecasts;
using Coilwright.Analysis.Uncertainty;
using Coilwright.Physics;

namespace Coilwright.Analysis.Comparisons;

/// <summary>Two pickups against each other, by whole forecasts of both and one propagation through both at once.</summary>
public static class PickupComparison
{
    /// <summary>Results behind each quantity: first, second, difference, logarithm of the ratio.</summary>
    private const int Each = 4;

    /// <summary>Every quantity that both have, in the first one's order.</summary>
    /// <param name="first">What the other is told against.</param>
    /// <param name="second">The other.</param>
    /// <param name="names">Quantities wanted; null for all.</param>
    public static IReadOnlyList<ComparisonLine> Between(SolvedPickup first, SolvedPickup second, IReadOnlyCollection<string>? names = null)
    {
        SolvedPickup.Reading here = first.Read(),
            there = second.Read();
        (int First, int Second)[] places =
        [
            .. here
                .Quantities.Index()
                .Select(one => (one.Index, there.Quantities.ToList().FindIndex(other => other.Name == one.Item.Name)))
                .Where(pair => pair.Item2 >= 0 && (names?.Contains(here.Quantities[pair.Index].Name) ?? true)),
        ];
        NamedQuantity[] quantities = [.. places.Select(place => here.Quantities[place.First])];
        (UncertainInput[] joint, int[] ofFirst, int[] ofSecond) = Joined(first.Inputs, second.Inputs);
        PropagatedResult[] results = Propagation.FirstOrder(
            joint,
            (x, y) =>
            {
                here.ReadAt(i => x[ofFirst[i]]);
                there.ReadAt(i => x[ofSecond[i]]);
                for (int q = 0; q < places.Length; q++)
                {
                    (double a, double b) = (here.Values[places[q].First], there.Values[places[q].Second]);
                    (y[Each * q], y[Each * q + 1], y[Each * q + 2], y[Each * q + 3]) = (a, b, b - a, Math.Log(b / a));
                }
            },
            [.. quantities.SelectMany(quantity => (Scatter[])[quantity.Scatter, quantity.Scatter, Scatter.Normal, Scatter.Normal])]
        );
        return [.. quantities.Select((quantity, q) => Line(quantity, results[(Each * q)..(Each * q + Each)]))];
    }

    private static ComparisonLine Line(NamedQuantity quantity, PropagatedResult[] results)
    {
        Estimate? Existing(int place)
        {
            Estimate estimate = results[place].Estimate;
            if (!(double.IsFinite(estimate.Value) && double.IsFinite(estimate.Low) && double.IsFinite(estimate.High)))
            {
                return null;
            }

            return place < 2 ? quantity.Told(estimate) : estimate;
        }

        Estimate? first = Existing(0),
            second = Existing(1);
        bool asRatio = quantity.Unit is not ("dB" or "dBV") && first is { Low: > 0 } && second is { Low: > 0 };
        Estimate? ratio =
            asRatio && Existing(3) is { } log
                ? new Estimate(Math.Exp(log.Value), Math.Exp(log.Low), Math.Exp(log.High), Basis.Forecast)
                : null;
        return new ComparisonLine(quantity.Name, quantity.Unit, first, second, first is null || second is null ? null : Existing(2), ratio);
    }

    /// <summary>
    /// Inputs of the same name and part are one cause; each as a normal deviate. Places of either pickup's own in the list of all.
    /// </summary>
    private static (UncertainInput[] Joint, int[] OfFirst, int[] OfSecond) Joined(
        IReadOnlyList<UncertainInput> first,
        IReadOnlyList<UncertainInput> second
    )
    {
        List<string> names = [.. first.Concat(second).Select(Key).Distinct(StringComparer.Ordinal)];
        Estimate deviate = Estimate.FromDeviation(0, 1, Basis.Forecast);
        UncertainInput[] joint = [.. names.Select(name => new UncertainInput(name, "1", deviate, Scatter.Normal, ""))];
        return (joint, [.. first.Select(input => names.IndexOf(Key(input)))], [.. second.Select(input => names.IndexOf(Key(input)))]);
    }

    private static string Key(UncertainInput input) => $"{input.Cause}|{input.Name}|{input.Part}";
}
