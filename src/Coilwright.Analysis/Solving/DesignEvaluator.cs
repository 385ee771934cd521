using Coilwright.Analysis.Forecasts;
using Coilwright.Physics;
using Coilwright.Physics.BoundaryElements;
using Coilwright.Physics.Circuit;
using Coilwright.Physics.Winding;

namespace Coilwright.Analysis.Solving;

/// <summary>
/// Evaluates whole pickups of one family quickly: the forecast itself, with the field taken from <see cref="FieldVersusBuild"/>.
/// </summary>
internal sealed class DesignEvaluator
{
    /// <summary>Thickest winding considered on a bobbin that states no room, m; our assumption.</summary>
    private const double MostBuildM = 12e-3;

    private readonly LoadCircuit? _load;
    private readonly ForecastOptions _options;
    private readonly OutputByBuild? _output;
    private (PeakPredictor? Bare, PeakPredictor? Loaded) _trails;

    /// <param name="family">Whole pickup whose turns and wire are varied.</param>
    /// <param name="load">What hangs on it.</param>
    /// <param name="ends">Designs with the thinnest and the thickest windings.</param>
    /// <param name="cancel">Stops the field solutions.</param>
    public DesignEvaluator(PickupModel family, LoadCircuit? load, IReadOnlyList<PickupModel> ends, CancellationToken cancel)
    {
        _load = load;
        ForecastOptions plain = new() { Strings = false };
        FieldProblem problem = ForecastScene.ProblemOf(
            family,
            [.. family.Coils.Select((_, c) => ForecastScene.WoundOf(family, c))],
            ForecastScene.FrequenciesOf(family, plain)
        );
        double[] ratios =
        [
            .. ends.SelectMany(end => end.Coils.Select((_, c) => ForecastScene.WoundOf(end, c).BuildM / problem.Coils[c].BuildM)),
        ];
        (double low, double high) = (0.98 * ratios.Min(), 1.02 * ratios.Max());
        FieldVersusBuild field = new(new FastFieldEngine(), problem, low, high, cancel);
        _options = plain with { Engine = field };
        _output = family.Strings is null ? null : new OutputByBuild(family, problem, low, high, cancel);
    }

    /// <summary>The family with a wire and turns.</summary>
    /// <param name="family">The family.</param>
    /// <param name="wire">Wire of all coils, or each coil's own.</param>
    /// <param name="turns">Turns of the first coil; the others keep their ratio to it.</param>
    /// <param name="whole">True rounds the other coils' turns.</param>
    public static PickupModel With(PickupModel family, WireChoice wire, double turns, bool whole = false) =>
        family with
        {
            Coils =
            [
                .. family.Coils.Select(
                    (coil, c) =>
                    {
                        double scaled = turns * coil.Winding.Turns / family.Coils[0].Winding.Turns;
                        return coil with
                        {
                            Wire = wire.Model ?? coil.Wire,
                            Learnt = LearntOn(coil, wire),
                            Winding = coil.Winding with { Turns = whole ? Math.Round(scaled) : scaled },
                        };
                    }
                ),
            ],
        };

    /// <summary>What was learnt of a coil, of its bobbin alone where another wire is wound on it.</summary>
    private static LearntCoil? LearntOn(CoilModel coil, WireChoice wire) =>
        wire.Model is null || wire.Model == coil.Wire || coil.Learnt is not { } learnt
            ? coil.Learnt
            : learnt with
            {
                DcResistance = learnt.OnMeasuredWire,
            };

    /// <summary>Every quantity by name; NaN where one does not exist. Follows the peaks of the design evaluated before.</summary>
    public IReadOnlyList<(string Name, string Unit, double Value)> Evaluate(PickupModel design)
    {
        ForecastScene scene = new(design, _options, CancellationToken.None);
        ForecastInputs inputs = new(design, scene);
        ForecastVector vector = new(scene, inputs, _load);
        vector.FollowPeaks(_trails.Bare, _trails.Loaded);
        double[] y = new double[vector.Count];
        vector.Evaluate([.. inputs.All.Select(input => input.Estimate.Value)], y);
        _trails = vector.TrailsAt(y);
        List<(string, string, double)> values =
        [
            .. NamedQuantity
                .CreateAll(scene, vector, _load is not null)
                .Select(quantity => (quantity.Name, quantity.Unit, quantity.Read(y))),
        ];
        if (_output is not null)
        {
            values.Add(("output", NamedQuantity.OutputUnit, _output.At(scene.Wound[0].BuildM) * design.Coils[0].Winding.Turns));
        }

        return values;
    }

    /// <summary>True when every coil stays within its room and its shop's limit of fill.</summary>
    public static bool Fits(PickupModel design)
    {
        for (int c = 0; c < design.Coils.Count; c++)
        {
            Bobbin bobbin = design.Coils[c].Bobbin;
            WoundCoil wound = ForecastScene.WoundOf(design, c);
            if (wound.BuildM > (bobbin.MaxBuildM ?? MostBuildM) || wound.Fill > bobbin.FillLimit)
            {
                return false;
            }
        }

        return true;
    }
}
