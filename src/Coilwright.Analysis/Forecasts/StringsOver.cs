using System.Numerics;
using Coilwright.Physics;
using Coilwright.Physics.BoundaryElements;
using Coilwright.Physics.Strings;
using Coilwright.Physics.Winding;

namespace Coilwright.Analysis.Forecasts;

/// <summary>How a string's answers move with the magnets and with its height, as powers and rates of the middle values.</summary>
/// <param name="LinkageByMagnet">d ln linkage / d ln magnet strength.</param>
/// <param name="SensitivityByMagnet">d ln sensitivity / d ln magnet strength.</param>
/// <param name="LinkagePerM">d ln linkage / d height, 1/m.</param>
/// <param name="SensitivityPerM">d ln sensitivity / d height, 1/m.</param>
/// <param name="FieldPerM">d ln field / d height, 1/m.</param>
internal sealed record StringTrends(
    double LinkageByMagnet,
    double SensitivityByMagnet,
    double LinkagePerM,
    double SensitivityPerM,
    double FieldPerM
);

/// <summary>The strings of a model over its solved field.</summary>
internal sealed class StringsOver
{
    private const double Stronger = 1.1;
    private const double HigherM = 2e-4;

    private readonly Func<int, double> _axisM;

    private StringsOver(
        StringScene scene,
        Func<int, double> axisM,
        IReadOnlyList<StringAnswer> answers,
        StringTrends trends,
        double magnetSpread
    ) => (Scene, _axisM, Answers, Trends, MagnetSpread) = (scene, axisM, answers, trends, magnetSpread);

    /// <summary>The solved field as strings meet it.</summary>
    public StringScene Scene { get; }

    /// <summary>Change of the pull with height over the pull, middle string, 1/m.</summary>
    public double PullPerM { get; private init; }

    /// <summary>Half-width of ln pull at 95 %: steel, magnets and height.</summary>
    public double PullSpread { get; private init; }

    /// <summary>By ascending x.</summary>
    public IReadOnlyList<StringAnswer> Answers { get; }

    /// <summary>Trends of the middle string, taken for all.</summary>
    public StringTrends Trends { get; }

    /// <summary>Half-width of the magnets' strength over its value: the widest of the materials, which are taken to go together.</summary>
    public double MagnetSpread { get; }

    /// <summary>Solves the strings; null when the model has none.</summary>
    /// <param name="model">The pickup.</param>
    /// <param name="field">Its solved field.</param>
    /// <param name="resistanceOhm">DC resistance of each coil, which shares the current of coils in parallel.</param>
    /// <param name="segments">Segments of each string.</param>
    /// <param name="cancel">Stops between strings.</param>
    public static StringsOver? Solve(PickupModel model, FieldSolution field, double[] resistanceOhm, int segments, CancellationToken cancel)
    {
        if (model.Strings is not { } set)
        {
            return null;
        }

        double[] turns = Turns(model, field, resistanceOhm);
        StringGrid grid = StringGrid.Over([.. model.Coils.Select(coil => coil.Position.YM).Distinct()], segments, IsSymmetric(model));
        StringScene scene = new(field.Map, turns, grid),
            stronger = new(field.Map, turns, grid, Stronger);
        double top = TopM(model);
        int middle = set.Count / 2;
        StringAnswer[] answers = new StringAnswer[set.Count + 2];
        Parallel.For(0, answers.Length, new ParallelOptions { CancellationToken = cancel }, k =>
        {
            int i = k < set.Count ? k : middle;
            double z = Axis(i) + (k > set.Count ? HigherM : 0);
            answers[k] = (k == set.Count ? stronger : scene).Solve(set.Strings[i], set.XM(i), z, sideways: false);
        });
        double spread = MagnetSpreadOf(model),
            pullPerM = Ratio(answers[middle].PullN, answers[^1].PullN) / HigherM;
        double byMagnet = Ratio(answers[middle].PullN, answers[^2].PullN) / Math.Log(Stronger) * Math.Log(1 + spread);
        return new StringsOver(scene, Axis, answers[..set.Count], TrendsOf(answers[middle], answers[^2], answers[^1]), spread)
        {
            PullPerM = pullPerM,
            PullSpread = Math.Sqrt(
                Math.Pow(Math.Log(ForecastInputs.SteelFactor), 2)
                    + byMagnet * byMagnet
                    + Math.Pow(pullPerM * ForecastInputs.ClearanceWithinM(model), 2)
            ),
        };

        double Axis(int i) => top + set.ClearanceM + set.Strings[i].OuterDiameterM / 2;
    }

    /// <summary>The middle string alone over a field; null when the model has none.</summary>
    /// <param name="model">The pickup.</param>
    /// <param name="map">Its solved field.</param>
    /// <param name="turns">Turns of each coil, signed, over those of the field's.</param>
    /// <param name="segments">Segments of the string.</param>
    public static StringAnswer? Middle(PickupModel model, FieldMap map, double[] turns, int segments)
    {
        if (model.Strings is not { } set)
        {
            return null;
        }

        StringGrid grid = StringGrid.Over([.. model.Coils.Select(coil => coil.Position.YM).Distinct()], segments, IsSymmetric(model));
        int middle = set.Count / 2;
        double zM = TopM(model) + set.ClearanceM + set.Strings[middle].OuterDiameterM / 2;
        return new StringScene(map, turns, grid).Solve(set.Strings[middle], set.XM(middle), zM, sideways: false);
    }

    /// <summary>Height of a string's axis, m.</summary>
    public double AxisM(int index) => _axisM(index);

    /// <summary>Height of the highest pole top, or of the windings where there is no pole, m.</summary>
    public static double TopM(PickupModel model) =>
        model.Coils.Max(coil =>
            coil.Position.ZM + (coil.Poles.Count > 0 ? coil.Poles.Max(pole => pole.TopsM.Max()) : coil.Bobbin.WindingHeightM / 2)
        );

    private static double[] Turns(PickupModel model, FieldSolution field, double[] resistanceOhm)
    {
        Complex jOmega = new(0, 2 * Math.PI * 1000);
        double[] weights = CoilNetwork.Weights(model.Connection, model.Coils.Count, (i, j) =>
            jOmega * field.StaticInductanceH[i, j] + (i == j ? resistanceOhm[i] : 0)
        );
        return
        [
            .. model.Coils.Select(
                (coil, c) => weights[c] * coil.Winding.Turns * (coil.Winding.Direction == WindingDirection.CounterClockwise ? 1 : -1)
            ),
        ];
    }

    /// <summary>True when the plane through the one row of coils mirrors windings and magnets.</summary>
    private static bool IsSymmetric(PickupModel model)
    {
        double y = model.Coils[0].Position.YM;
        return model.Coils.All(coil => Math.Abs(coil.Position.YM - y) < 1e-9)
            && model.Bars.All(bar => Math.Abs(bar.CentreM.YM - y) < 1e-9 && Math.Abs(bar.PolarisationT.YM) <= 0);
    }

    private static double Ratio(double one, double other) => Math.Abs(one) > 0 && other / one > 0 ? Math.Log(other / one) : 0;

    private static StringTrends TrendsOf(StringAnswer rest, StringAnswer stronger, StringAnswer higher)
    {
        return new StringTrends(
            Ratio(rest.LinkageWb, stronger.LinkageWb) / Math.Log(Stronger),
            Ratio(rest.VerticalWbPerM, stronger.VerticalWbPerM) / Math.Log(Stronger),
            Ratio(rest.LinkageWb, higher.LinkageWb) / HigherM,
            Ratio(rest.VerticalWbPerM, higher.VerticalWbPerM) / HigherM,
            Ratio(rest.FluxDensityT.ZM, higher.FluxDensityT.ZM) / HigherM
        );
    }

    /// <summary>Half-width of the magnets' strength over its value: the widest of the materials; zero without magnets.</summary>
    public static double MagnetSpreadOf(PickupModel model) =>
        model
            .Coils.SelectMany(coil => coil.Poles)
            .Select(pole => pole.PolarisationT)
            .Where(source => Math.Abs(source.Value) > 0)
            .Select(source => (source.High - source.Low) / (2 * Math.Abs(source.Value)))
            .Concat(model.Bars.Where(bar => bar.PolarisationT != default).Select(bar => bar.PolarisationSpread))
            .DefaultIfEmpty(0)
            .Max();
}
