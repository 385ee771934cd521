using Coilwright.Physics;
using Coilwright.Physics.BoundaryElements;
using Coilwright.Physics.Electrostatics;
using Coilwright.Physics.Strings;
using Coilwright.Physics.Winding;

namespace Coilwright.Analysis.Forecasts.Sizes;

/// <summary>One geometry solved for its differences, its coils at one turn each and wound one way.</summary>
internal sealed class GeometryState
{
    /// <summary>Segments of the one string that is solved: a change needs fewer than a value.</summary>
    private const int Segments = 24;

    private readonly PickupModel _model;
    private readonly NeighbourField _field;
    private readonly IReadOnlyList<double> _areasM2;
    private readonly GradientArea _gradient;
    private readonly Lazy<(IReadOnlyList<double> AirHPerM, IReadOnlyList<double> AreaM2PerM)> _byBuild;
    private readonly double[] _builds;
    private readonly double[] _hz;
    private readonly StringAnswer? _string;
    private readonly double? _overPoleT;

    private GeometryState(ForecastScene scene, GeometryParts parts, GeometryState? from, CancellationToken cancel)
    {
        (_model, _builds) = (parts.Model, parts.BuildsM);
        _hz = [.. ForecastScene.CurveFrequenciesOf(_model)];
        FieldCoil[] coils = [.. _model.Coils.Select((coil, c) => new FieldCoil(coil.Bobbin, _builds[c], 1, 1, coil.Position, coil.Poles))];
        FieldProblem problem = new(coils, _model.Bars, _model.Sheets, _hz);
        _field = from?._field.Neighbour(problem, cancel) ?? NeighbourField.Solve(problem, cancel);
        (_areasM2, _gradient) = (_field.AreasM2(), _field.Gradient());
        _byBuild = new(() => (_field.AirByBuildHPerM(), _field.AreaByBuildM2PerM()));
        double[] signed = [.. _model.Coils.Select((coil, c) => IsJoined(c) ? parts.Turns[c] * SignOf(coil) : 0)];
        Drops = DropsOf(signed);
        if (_field.IsStill)
        {
            (_string, _overPoleT) = (from!._string, from._overPoleT);
        }
        else
        {
            _string = scene.Strings is null ? null : StringsOver.Middle(_model, _field.Map, signed, Segments);
            _overPoleT = scene.Poles is { } poles ? PolesOver.StrongestT(_model, _field.Map, poles.JigM) : null;
        }

        Stray = (from ?? this).StrayOf(parts);
    }

    /// <summary>Solves a geometry.</summary>
    /// <param name="scene">The pickup that it belongs to.</param>
    /// <param name="parts">The geometry.</param>
    /// <param name="cancel">Stops it.</param>
    public static GeometryState Solve(ForecastScene scene, GeometryParts parts, CancellationToken cancel) =>
        new(scene, parts, from: null, cancel);

    /// <summary>The same with one length changed, solved as far as it differs.</summary>
    /// <param name="scene">The pickup that it belongs to.</param>
    /// <param name="parts">The changed geometry.</param>
    /// <param name="cancel">Stops it.</param>
    public GeometryState Neighbour(ForecastScene scene, GeometryParts parts, CancellationToken cancel) => new(scene, parts, this, cancel);

    /// <summary>Capacitances outside the windings, covers and plates in their places.</summary>
    public StrayEstimate Stray { get; }

    /// <summary>The same of a changed geometry, with the voltages of this one.</summary>
    public StrayEstimate StrayOf(GeometryParts parts) => StrayCapacitance.Compute(parts.Covered, parts.BuildsM, Drops);

    /// <summary>Share of each coil in the voltage across the pickup.</summary>
    public double[] Drops { get; }

    /// <summary>The rate of a length that no field feels, from what it does to the capacitances outside the windings.</summary>
    public SizeRate Unmoved(StrayRate stray) => RateTo(this, 1) with { StrayF = stray };

    /// <summary>
    /// Change from here to another geometry, per metre. Where the builds differ too, what a forecast adds for them by itself is left out.
    /// </summary>
    /// <param name="there">The same with one length changed.</param>
    /// <param name="byM">By how much, m.</param>
    public SizeRate RateTo(GeometryState there, double byM)
    {
        int coils = _model.Coils.Count;
        return new SizeRate
        {
            FrequenciesHz = _hz,
            AirH =
            [
                .. Enumerable
                    .Range(0, coils)
                    .Select(c => (there._field.AirInductanceH[c, c] - _field.AirInductanceH[c, c] - AddedH(there, c)) / byM),
            ],
            StaticH = InductanceSlope(there, _field.StaticInductanceH, there._field.StaticInductanceH, byM),
            SpectrumH = [.. Enumerable.Range(0, _hz.Length).Select(k => InductanceSlope(there, RealAt(k), there.RealAt(k), byM))],
            LossPerM = [.. Enumerable.Range(0, _hz.Length).Select(k => LossSlope(there, k, byM))],
            AreaM2 = [.. Enumerable.Range(0, coils).Select(c => (there._areasM2[c] - _areasM2[c] - AddedM2(there, c)) / byM)],
            GradientM3 = GradientSlope(there, byM),
            StrayF = StrayRate.Over(Stray, there.Stray, byM),
            StringPerM = StringSlope(there, byM),
            PoleFieldPerM = _overPoleT is { } at && there._overPoleT is { } moved ? LogRatio(at, moved) / byM : 0,
        };
    }

    private static int SignOf(CoilModel coil) => coil.Winding.Direction == WindingDirection.CounterClockwise ? 1 : -1;

    private bool IsJoined(int coil) => coil == 0 || _model.Connection != Connection.Single;

    /// <summary>By how much a coil is thicker there, m.</summary>
    private double Grown(GeometryState there, int coil) => there._builds[coil] - _builds[coil];

    /// <summary>What a forecast adds to a coil's own inductance for that, H.</summary>
    private double AddedH(GeometryState there, int coil) =>
        Math.Abs(Grown(there, coil)) > 0 ? _byBuild.Value.AirHPerM[coil] * Grown(there, coil) : 0;

    /// <summary>The same of its area, m².</summary>
    private double AddedM2(GeometryState there, int coil) =>
        Math.Abs(Grown(there, coil)) > 0 ? _byBuild.Value.AreaM2PerM[coil] * Grown(there, coil) : 0;

    private double[,] InductanceSlope(GeometryState there, double[,] here, double[,] other, double byM)
    {
        double[,] slope = Slope(here, other, byM);
        for (int c = 0; c < _builds.Length; c++)
        {
            slope[c, c] -= AddedH(there, c) / byM;
        }

        return slope;
    }

    private double[,] GradientSlope(GeometryState there, double byM)
    {
        double[,] slope = Slope(_gradient.M3, there._gradient.M3, byM);
        for (int k = 0; k < slope.Length; k++)
        {
            slope[k / 3, k % 3] -= _gradient.ByBuildM2[k / 3, k % 3] * Grown(there, k / 3) / byM;
        }

        return slope;
    }

    private double[] DropsOf(double[] signed)
    {
        if (_model.Connection != Connection.Series || signed.Length == 1)
        {
            return [.. signed.Select(_ => 1.0)];
        }

        double[,] inductance = (double[,])_field.StaticInductanceH.Clone();
        for (int k = 0; k < inductance.Length; k++)
        {
            (int i, int j) = (k / signed.Length, k % signed.Length);
            inductance[i, j] *= signed[i] * signed[j];
        }

        return ForecastScene.Drops(inductance, [.. signed.Select(_ => 1.0)]);
    }

    private double[,] RealAt(int k)
    {
        int n = _model.Coils.Count;
        double[,] real = new double[n, n];
        for (int i = 0; i < real.Length; i++)
        {
            real[i / n, i % n] = _field.SpectrumH[k][i / n, i % n].Real;
        }

        return real;
    }

    private double[] LossSlope(GeometryState there, int k, double byM) =>
        [
            .. Enumerable
                .Range(0, _model.Coils.Count)
                .Select(c => LogRatio(_field.SpectrumH[k][c, c].Imaginary, there._field.SpectrumH[k][c, c].Imaginary) / byM),
        ];

    private (double Linkage, double Sensitivity, double Field) StringSlope(GeometryState there, double byM) =>
        _string is { } here && there._string is { } other
            ? (
                LogRatio(here.LinkageWb, other.LinkageWb) / byM,
                LogRatio(here.VerticalWbPerM, other.VerticalWbPerM) / byM,
                LogRatio(here.FluxDensityT.ZM, other.FluxDensityT.ZM) / byM
            )
            : default;

    private static double LogRatio(double one, double other) => Math.Abs(one) > 0 && other / one > 0 ? Math.Log(other / one) : 0;

    private static double[,] Slope(double[,] here, double[,] there, double byM)
    {
        int columns = here.GetLength(1);
        double[,] slope = new double[here.GetLength(0), columns];
        for (int k = 0; k < slope.Length; k++)
        {
            slope[k / columns, k % columns] = (there[k / columns, k % columns] - here[k / columns, k % columns]) / byM;
        }

        return slope;
    }
}
