using System.Numerics;

namespace Coilwright.Physics.Strings;

/// <summary>
/// What a winding hears along a string: volts for a velocity of 1 m/s of each short piece of it, towards the pickup. SI units.
/// </summary>
public sealed class StringAperture
{
    private readonly double[] _yM,
        _voltSPerM;

    private StringAperture(double[] yM, double[] voltSPerM) => (_yM, _voltSPerM) = (yM, voltSPerM);

    /// <summary>Volts per m/s of the whole string moving as one.</summary>
    public double SensitivityVoltSPerM => _voltSPerM.Sum();

    /// <summary>The aperture of a solved string; where half of it was solved, the mirror image is added.</summary>
    /// <param name="answer">The solved string.</param>
    public static StringAperture Of(StringAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        StringGrid grid = answer.Magnetised.Grid;
        double[] volts = [.. answer.Aperture.Zip(grid.WeightM, (perM, length) => -perM * length)];
        if (!grid.IsHalf)
        {
            return new StringAperture(grid.YM, volts);
        }

        double[] halved = [.. volts.Select(volt => volt / 2)];
        return new StringAperture([.. grid.YM, .. grid.YM.Select(y => 2 * grid.YM[0] - y)], [.. halved, .. halved]);
    }

    /// <summary>Points of no width, as many as are given.</summary>
    /// <param name="points">Place along the string from the pickup's middle, m, and volts per m/s there.</param>
    public static StringAperture OfPoints(params (double YM, double VoltSPerM)[] points) =>
        new([.. points.Select(one => one.YM)], [.. points.Select(one => one.VoltSPerM)]);

    /// <summary>What is heard of a standing wave: the sum over the string of volts times sin(k·(p + y)), V per m/s.</summary>
    /// <param name="radPerM">Wave number k, rad/m.</param>
    /// <param name="fromBridgeM">Place p of the pickup's middle from the bridge, m.</param>
    public double Heard(double radPerM, double fromBridgeM)
    {
        double sum = 0;
        for (int i = 0; i < _yM.Length; i++)
        {
            sum += _voltSPerM[i] * Math.Sin(radPerM * (fromBridgeM + _yM[i]));
        }

        return sum;
    }

    /// <summary>What is heard of a wave that travels along the string, wherever the pickup stands: |Σ volts·e^(jky)|, V per m/s.</summary>
    /// <param name="radPerM">Wave number k, rad/m.</param>
    public double Travelling(double radPerM)
    {
        Complex sum = Complex.Zero;
        for (int i = 0; i < _yM.Length; i++)
        {
            sum += _voltSPerM[i] * Complex.FromPolarCoordinates(1, radPerM * _yM[i]);
        }

        return sum.Magnitude;
    }
}
