using Coilwright.Analysis.Uncertainty;
using Coilwright.Physics;
using Coilwright.Physics.Sizes;

namespace Coilwright.Analysis.Forecasts;

/// <summary>A length of the model and the places of the inputs that move it: their departures add up.</summary>
internal readonly record struct SizePlaces(int Size, IReadOnlyList<int> Places);

/// <summary>The lengths of a pickup as uncertain inputs.</summary>
internal sealed partial class ForecastInputs
{
    /// <summary>Lengths that move something, in the model's order.</summary>
    public IReadOnlyList<SizePlaces> Sizes { get; private set; } = [];

    /// <summary>How far a length stands from its middle, m.</summary>
    public double DepartureM(SizePlaces size, double[] x)
    {
        double sum = 0;
        foreach (int place in size.Places)
        {
            sum += x[place] - _all[place].Estimate.Value;
        }

        return sum;
    }

    /// <summary>
    /// One input for each length; lengths of several coils that one tool made have one in common, and each what differs from piece to
    /// piece.
    /// </summary>
    private void AddSizes(PickupModel model)
    {
        (int Place, PartSize Size)[] open =
        [
            .. model.Sizes.Index().Where(one => one.Item.Kind != SizeKind.Clearance && !one.Item.Estimate.IsExact),
        ];
        List<SizePlaces> all = [];
        while (open.Length > 0)
        {
            PartSize first = open[0].Size;
            (int Place, PartSize Size)[] alike =
            [
                .. open.Where((one, k) => k == 0 || (one.Size.Part != first.Part && first.IsAlike(one.Size))),
            ];
            all.AddRange(alike.Length == 1 ? [Alone(model, open[0])] : Together(model, alike));
            open = [.. open.Except(alike)];
        }

        Sizes = [.. all.OrderBy(one => one.Size)];
    }

    private SizePlaces Alone(PickupModel model, (int Place, PartSize Size) one) =>
        new(one.Place, [Append(InputOf(one.Size, NameOf(model, one.Size), one.Size.Estimate, one.Size.PieceShare))]);

    private IEnumerable<SizePlaces> Together(PickupModel model, (int Place, PartSize Size)[] alike)
    {
        PartSize first = alike[0].Size;
        double piece = first.PieceShare * first.HalfWidthM,
            common = Math.Sqrt(1 - first.PieceShare * first.PieceShare) * first.HalfWidthM,
            value = first.Estimate.Value;
        int[] shared =
            common > 0
                ?
                [
                    Append(
                        InputOf(first, first.Name + ", all alike", first.Estimate with { Low = value - common, High = value + common }, 0)
                    ),
                ]
                : [];
        foreach ((int place, PartSize size) in alike)
        {
            int[] own =
                piece > 0
                    ? [Append(InputOf(size, NameOf(model, size), size.Estimate with { Low = value - piece, High = value + piece }, 1))]
                    : [];
            yield return new SizePlaces(place, [.. shared, .. own]);
        }
    }

    private static string NameOf(PickupModel model, PartSize size) =>
        size.IsOfCoil && model.Coils.Count > 1 ? $"{size.Name} of coil {model.Coils[size.Part].Name}" : size.Name;

    private static UncertainInput InputOf(PartSize size, string name, Estimate estimate, double pieceShare) =>
        new(name, "m", estimate, Scatter.Normal, size.Source)
        {
            Cause = CauseOf(size),
            IsCommon = pieceShare <= 0,
            PieceShare = pieceShare,
            Part = FormattableString.Invariant($"{size.Kind} {size.Estimate.Value * 1e6:0.0}"),
        };

    private static string CauseOf(PartSize size) =>
        size.Kind switch
        {
            <= SizeKind.Flange => "bobbinSizes",
            <= SizeKind.PoleTop => "poleSizes",
            <= SizeKind.BarZ => "magnetSizes",
            _ => "metalworkSizes",
        };

    /// <summary>How well the height of the strings is known, m.</summary>
    public static double ClearanceWithinM(PickupModel model) => ClearanceOf(model)?.HalfWidthM ?? HeightM;

    private static PartSize? ClearanceOf(PickupModel model) => model.Sizes.FirstOrDefault(size => size.Kind == SizeKind.Clearance);
}
