using Coilwright.Physics;
using Coilwright.Physics.BoundaryElements;
using Coilwright.Physics.Strings;
using Coilwright.Physics.Winding;

namespace Coilwright.Analysis.Forecasts.Sizes;

/// <summary>One geometry solved by the quick engine, its coils at one turn each and wound one way.</summary>
internal sealed class GeometryState
{
    /// <summary>Segments of the one string that is solved: a change needs fewer than a value.</summary>
    private const int Segments = 24;

    private readonly PickupModel _model;
    private readonly FieldSolution _field;
    private readonly double[] _builds;
    private readonly double[] _hz;
    private readonly StringAnswer? _string;
    private readonly double? _overPoleT;

    /// <param name="scene">The pickup that it belongs to.</param>
    /// <param name="model">The geometry.</param>
    /// <param name="builds">Build of each coil, m.</param>
    /// <param name="turns">Turns of each coil over those of the first.</param>
    /// <param name="cancel">Stops it.</param>
    public GeometryState(ForecastScene scene, PickupModel model, double[] builds, double[] turns, CancellationToken cancel)
    {
        (_model, _builds) = (model, builds);
        _hz = [.. ForecastScene.CurveFrequenciesOf(model)];
        FieldCoil[] coils = [.. model.Coils.Select((coil, c) => new FieldCoil(coil.Bobbin, builds[c], 1, 1, coil.Position, coil.Poles))];
        _field = new FastFieldEngine().Solve(new FieldProblem(coils, model.Bars, model.Sheets, _hz), cancel);
        double[] signed = [.. model.Coils.Select((coil, c) => IsJoined(c) ? turns[c] * SignOf(coil) : 0)];
        Drops = DropsOf(signed);
        _string = scene.Strings is null ? null : StringsOver.Middle(model, _field, signed, Segments);
        _overPoleT = scene.Poles is { } poles ? PolesOver.StrongestT(model, _field, poles.JigM) : null;
    }

    /// <summary>Share of each coil in the voltage across the pickup.</summary>
    public double[] Drops { get; }

    /// <summary>The rate of a length that no field feels.</summary>
    public SizeRate Unmoved(StrayRate stray) => RateTo(this, 1, stray);

    /// <summary>
    /// Change from here to another geometry, per metre. Where the builds differ too, what a forecast adds for them by itself is left out.
    /// </summary>
    /// <param name="there">The same with one length changed.</param>
    /// <param name="byM">By how much, m.</param>
    /// <param name="stray">What the length does to the capacitances outside the windings.</param>
    public SizeRate RateTo(GeometryState there, double byM, StrayRate stray)
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
            AreaM2 =
            [
                .. Enumerable
                    .Range(0, coils)
                    .Select(c =>
                        (there._field.EffectiveAreaM2[c] - _field.EffectiveAreaM2[c] - _field.AreaByBuildM2PerM[c] * Grown(there, c)) / byM
                    ),
            ],
            GradientM3 = GradientSlope(there, byM),
            StrayF = stray,
            StringPerM = StringSlope(there, byM),
            PoleFieldPerM = _overPoleT is { } at && there._overPoleT is { } moved ? LogRatio(at, moved) / byM : 0,
        };
    }

    private static int SignOf(CoilModel coil) => coil.Winding.Direction == WindingDirection.CounterClockwise ? 1 : -1;

    private bool IsJoined(int coil) => coil == 0 || _model.Connection != Connection.Single;

    /// <summary>By how much a coil is thicker there, m.</summary>
    private double Grown(GeometryState there, int coil) => there._builds[coil] - _builds[coil];

    /// <summary>What a forecast adds to a coil's own inductance for that, H.</summary>
    private double AddedH(GeometryState there, int coil) => _field.AirInductanceByBuildHPerM[coil] * Grown(there, coil);

    private double[,] InductanceSlope(GeometryState there, double[,] here, double[,] other, double byM)
    {
        double[,] slope = Slope(here, other, byM);
        for (int c = 0; c < _builds.Length; c++)
        {
            slope[c, c] -= AddedH(there, c) / byM;
        }

        return slope;
    }

    private double[,]? GradientSlope(GeometryState there, double byM)
    {
        if (_field.Gradient is not { } here || there._field.Gradient is not { } other)
        {
            return null;
        }

        double[,] slope = Slope(here.M3, other.M3, byM);
        for (int k = 0; k < slope.Length; k++)
        {
            slope[k / 3, k % 3] -= here.ByBuildM2[k / 3, k % 3] * Grown(there, k / 3) / byM;
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
