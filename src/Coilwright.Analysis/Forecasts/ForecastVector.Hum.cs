using Coilwright.Physics.BoundaryElements;

namespace Coilwright.Analysis.Forecasts;

/// <summary>What the joined coils take up of hum: in a uniform field, and in one that changes from place to place.</summary>
internal sealed partial class ForecastVector
{
    private void Hum(double[] y, double[] weights)
    {
        y[PlaceOf(PickupResult.EffectiveArea)] = Enumerable.Range(0, _coils).Sum(c => weights[c] * AreaM2(c));
        double all = Enumerable.Range(0, _coils).Sum(c => Math.Abs(weights[c] * AreaM2(c)));
        y[PlaceOf(PickupResult.HumBalance)] = all > 0 ? y[PlaceOf(PickupResult.EffectiveArea)] / all : 0;
        for (int axis = 0; axis < 3; axis++)
        {
            y[PlaceOf(PickupResult.GradientX + axis)] = Enumerable.Range(0, _coils).Sum(c => weights[c] * GradientM3(c, axis));
        }
    }

    /// <summary>Turns × area of a coil, m², with its build and its cores.</summary>
    private double AreaM2(int c)
    {
        FieldSolution field = _scene.Field;
        double moved =
            field.AreaByBuildM2PerM.Length > 0 ? field.AreaByBuildM2PerM[c] * _buildChange[c] + field.AreaSpreadM2[c] * _cores : 0;
        return _turnsRatio[c] * (field.EffectiveAreaM2[c] + moved + _sizes.Field.AreaM2[c]);
    }

    /// <summary>What a field changing along an axis links with a coil, m³.</summary>
    private double GradientM3(int c, int axis) =>
        _scene.Field.Gradient is { } slope
            ? _turnsRatio[c]
                * (
                    slope.M3[c, axis]
                    + slope.ByBuildM2[c, axis] * _buildChange[c]
                    + slope.SpreadM3[c, axis] * _cores
                    + _sizes.Field.GradientM3[c, axis]
                )
            : 0;
}
