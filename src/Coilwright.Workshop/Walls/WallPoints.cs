using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop.Walls;

/// <summary>Which coils stand on a chart but neither move its limits nor signal.</summary>
public static class WallPoints
{
    /// <summary>Doubt of a resistance whose temperature nobody wrote down, and of the meter, as parts of one: those of the verdict.</summary>
    private const double UnknownTemperature = 0.02, Meter = 0.001;

    /// <summary>The point, marked when it lies outside the recipe's own limits beyond doubt, as a verdict would reject it.</summary>
    public static WallPoint Judged(WallPoint point, Band? band)
    {
        if (band is not { IsTarget: true })
        {
            return point;
        }

        double guard = band.AtHz is null ? Meter + (point.TemperatureKnown ? 0 : UnknownTemperature) : 0;
        return point with { LeftOut = point.Value * (1 + guard) < band.Low || point.Value * (1 - guard) > band.High };
    }
}
