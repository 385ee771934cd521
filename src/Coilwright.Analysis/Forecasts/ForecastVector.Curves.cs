using Coilwright.Physics.Circuit;

namespace Coilwright.Analysis.Forecasts;

/// <summary>Curves at given inputs, and the strings' part of the results.</summary>
internal sealed partial class ForecastVector
{
    /// <summary>The response curves at given input values: bare, then on the load.</summary>
    public IReadOnlyList<ForecastCurve> Curves(double[] x, int points)
    {
        double[] y = new double[Count];
        Evaluate(x, y);
        TabulatedBranch branch = BranchOf(y);
        double[] frequencies = PickupResponse.LogFrequencies(20, 20_000, points);
        return
        [
            .. ((LoadCircuit?[])[LoadCircuit.None, _load])
                .OfType<LoadCircuit>()
                .Select(
                    (load, i) =>
                        new ForecastCurve(
                            i > 0,
                            PickupResponse.Compute(branch, y[PlaceOf(PickupResult.Capacitance)], null, load, frequencies)
                        )
                ),
        ];
    }

    /// <summary>The series branch at given input values.</summary>
    public TabulatedBranch Branch(double[] x)
    {
        double[] y = new double[Count];
        Evaluate(x, y);
        return BranchOf(y);
    }

    /// <summary>The series branch of results that were filled before.</summary>
    public TabulatedBranch BranchOf(double[] y) =>
        new(
            [.. _scene.CurvePlaces.Select(k => _scene.FrequenciesHz[k])],
            [.. _scene.CurvePlaces.Select(k => y[PlaceOfSpectrum(k, inductance: true)])],
            [.. _scene.CurvePlaces.Select(k => y[PlaceOfSpectrum(k, inductance: false)])]
        );

    /// <summary>The strings' answers follow the turns, the steel, the magnets and the height from their middle.</summary>
    private void OverStrings(double[] x, double[] y)
    {
        if (_scene.Strings is not { } strings || _inputs.Strings is not { } places)
        {
            return;
        }

        double turns = _turnsRatio.Sum() / _coils,
            drawn = _inputs.Drawn is { } place ? x[place] : 1,
            steel = x[places.Steel] * drawn,
            magnet = Math.Log(x[places.Magnets]);
        double higherM = x[places.Height] - _scene.Model.Strings!.ClearanceM;
        StringTrends trends = strings.Trends;
        double linkage =
            turns * steel * Math.Exp(trends.LinkageByMagnet * magnet + trends.LinkagePerM * higherM + _sizes.Field.Strings.Linkage);
        double moved = trends.SensitivityByMagnet * magnet + trends.SensitivityPerM * higherM;
        double sensitivity = turns * steel * Math.Exp(moved + _sizes.Field.Strings.Sensitivity);
        double field = drawn * Math.Exp(magnet + trends.FieldPerM * higherM + _sizes.Field.Strings.Field);
        for (int s = 0; s < strings.Answers.Count; s++)
        {
            y[PlaceOf(s, StringResult.Linkage)] = strings.Answers[s].LinkageWb * linkage;
            y[PlaceOf(s, StringResult.Sensitivity)] = -strings.Answers[s].VerticalWbPerM * sensitivity;
            y[PlaceOf(s, StringResult.Field)] = strings.Answers[s].FluxDensityT.ZM * field;
        }
    }

    /// <summary>The field over the poles follows the magnets, the field's model and the distance.</summary>
    private void OverPoles(double[] x, double[] y)
    {
        if (_scene.Poles is not { } poles || _inputs.Poles is not { } places)
        {
            return;
        }

        double factor =
            (_inputs.Drawn is { } drawn ? x[drawn] : 1)
            * x[places.Magnets]
            * x[places.Model]
            * Math.Exp(poles.FieldPerM * (x[places.Jig] - poles.JigM) + _sizes.Field.PoleField);
        for (int p = 0; p < poles.Answers.Count; p++)
        {
            y[PlaceOfPole(p)] = poles.Answers[p].FieldT.Value * factor;
        }
    }
}
