using System.Collections.Concurrent;
using Coilwright.Physics;
using Coilwright.Physics.Sizes;

namespace Coilwright.Analysis.Forecasts.Sizes;

/// <summary>
/// What every length of a pickup does to its field: each is changed a little and the field solved again as far as it differs, once for a
/// geometry.
/// </summary>
/// <remarks>
/// One way of solving serves both engines: a rate good to some per cent moves an interval by as much of itself. Turns, wire, pitch, load
/// and temperature leave the geometry as it is but for the build, which is taken to the rung of a ladder below it, so that what is kept
/// never depends on what was asked before. A length that no cover feels is changed without covers and plates: their share in its rate is
/// left out.
/// </remarks>
internal sealed class SizeRates
{
    private const int MostKept = 200;

    /// <summary>Ratio of one rung to the next: a build stands on the one below it, so that no winding grows into its neighbour.</summary>
    private const double Rung = 1.05;

    /// <summary>A length is changed by so much, m, and by no more than this part of itself.</summary>
    private const double StepM = 5e-5,
        StepPart = 0.02;

    private static readonly ConcurrentDictionary<string, SizeRates> s_kept = new(StringComparer.Ordinal);

    private readonly SizeRate?[] _rates;

    private SizeRates(SizeRate?[] rates) => _rates = rates;

    /// <summary>What a length does; null for one that no field feels.</summary>
    /// <param name="size">Its place in the model's list.</param>
    public SizeRate? this[int size] => _rates[size];

    /// <summary>The rates of a solved pickup, kept from an earlier one of the same geometry where there was one.</summary>
    public static SizeRates Of(ForecastScene scene, CancellationToken cancel)
    {
        double[] builds = [.. scene.Wound.Select(wound => Below(wound.BuildM))],
            turns = [.. scene.Model.Coils.Select(coil => Below(coil.Winding.Turns / scene.Model.Coils[0].Winding.Turns))];
        string key = GeometryKey.Of(scene, builds, turns);
        if (s_kept.TryGetValue(key, out SizeRates? known))
        {
            return known;
        }

        if (s_kept.Count >= MostKept)
        {
            s_kept.Clear();
        }

        return s_kept[key] = new SizeRates(Solve(scene, builds, turns, cancel));
    }

    private static double Below(double value) => Math.Pow(Rung, Math.Floor(Math.Log(value) / Math.Log(Rung) + 1e-9));

    private static SizeRate?[] Solve(ForecastScene scene, double[] builds, double[] turns, CancellationToken cancel)
    {
        PickupModel model = scene.Model;
        int[] felt = [.. Enumerable.Range(0, model.Sizes.Count).Where(s => IsFelt(model.Sizes[s]))];
        GeometryState? bare = felt.Any(s => !IsOfSheet(model.Sizes[s])) ? At(Parts(covered: false, model, builds)) : null,
            whole = felt.Any(s => IsOfSheet(model.Sizes[s])) ? At(Parts(covered: true, model, builds)) : null;
        SizeRate?[] rates = new SizeRate?[model.Sizes.Count];
        Parallel.ForEach(felt, new ParallelOptions { CancellationToken = cancel }, s =>
        {
            PartSize size = model.Sizes[s];
            double byM = StepOf(model, size);
            bool covered = IsOfSheet(size);
            GeometryState from = covered ? whole! : bare!;
            GeometryParts there = Parts(covered, SizeMoves.Move(model, size, byM), Following(model, size, byM, builds));
            rates[s] = size.Kind is SizeKind.Wall or SizeKind.Flange
                ? from.Unmoved(StrayRate.Over(from.Stray, from.StrayOf(there), byM))
                : from.RateTo(from.Neighbour(scene, there, cancel), byM);
        });
        return rates;

        GeometryParts Parts(bool covered, PickupModel whole, double[] with) =>
            new(covered ? whole : whole with { Sheets = [] }, whole, with, turns);
        GeometryState At(GeometryParts parts) => GeometryState.Solve(scene, parts, cancel);
    }

    /// <summary>The same wire in a higher window stands less thick, unless its build was measured.</summary>
    private static double[] Following(PickupModel model, PartSize size, double byM, double[] builds)
    {
        double[] follow = [.. builds];
        if (size.Kind == SizeKind.WindingHeight && model.Coils[size.Part].Winding.MeasuredBuildM is null)
        {
            follow[size.Part] *= size.Estimate.Value / (size.Estimate.Value + byM);
        }

        return follow;
    }

    /// <summary>A sheet's thickness goes with its conductivity, and clearance with the height of the strings.</summary>
    private static bool IsFelt(PartSize size) =>
        size.Kind is not (SizeKind.MostBuild or SizeKind.Clearance or SizeKind.SheetThickness) && !size.Estimate.IsExact;

    private static bool IsOfSheet(PartSize size) => size.Kind >= SizeKind.SheetThickness;

    /// <summary>A little larger, or smaller where it cannot grow, m.</summary>
    private static double StepOf(PickupModel model, PartSize size)
    {
        bool isPlace =
            size.Kind is SizeKind.PoleTop or SizeKind.BarX or SizeKind.BarY or SizeKind.BarZ or SizeKind.SheetTop or SizeKind.SheetBottom;
        double stepM = isPlace ? StepM : Math.Min(StepM, StepPart * size.Estimate.Value);
        return size.Kind == SizeKind.EndRadius && SizeMoves.IsRound(model.Coils[size.Part].Bobbin) ? -stepM : stepM;
    }
}
