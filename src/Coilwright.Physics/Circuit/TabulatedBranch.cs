using System.Globalization;
using System.Numerics;

namespace Coilwright.Physics.Circuit;

/// <summary>A series branch given by tables of inductance and resistance against frequency.</summary>
/// <remarks>
/// Between the entries a cubic in ln f that keeps to the tables' rises and falls (weighted harmonic mean of neighbouring slopes; Fritsch
/// and Butland 1984, from memory [Interpolation]),
/// outside them the first or last entry. Continuous with its first derivative inside; no overshoot, so a positive table stays positive.
/// </remarks>
public sealed class TabulatedBranch : ISeriesBranch
{
    private readonly double[] logHz;
    private readonly Track inductanceH;
    private readonly Track resistanceOhm;

    /// <summary>A branch from its tables.</summary>
    /// <param name="frequenciesHz">At least one frequency, Hz, strictly rising, 1 mHz…1 GHz.</param>
    /// <param name="inductanceH">Series inductance at each, H, −100 kH…100 kH.</param>
    /// <param name="resistanceOhm">Series resistance at each, Ω, 0…1 TΩ.</param>
    /// <exception cref="ArgumentException">The tables are empty or not equally long.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An entry lies outside its range, or the frequencies do not rise.</exception>
    public TabulatedBranch(IReadOnlyList<double> frequenciesHz, IReadOnlyList<double> inductanceH, IReadOnlyList<double> resistanceOhm)
    {
        int count = frequenciesHz.Count;
        if (count == 0 || inductanceH.Count != count || resistanceOhm.Count != count)
        {
            throw new ArgumentException(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"The tables hold {count}, {inductanceH.Count} and {resistanceOhm.Count} entries; they must be "
                        + $"equally long and not empty."
                )
            );
        }

        logHz = new double[count];
        for (int i = 0; i < count; i++)
        {
            logHz[i] = Math.Log(
                Require.InRange(frequenciesHz[i], i == 0 ? 1e-3 : Math.BitIncrement(frequenciesHz[i - 1]), 1e9, nameof(frequenciesHz))
            );
        }

        this.inductanceH = new Track(logHz, inductanceH, -1e5, 1e5);
        this.resistanceOhm = new Track(logHz, resistanceOhm, 0, 1e12);
    }

    /// <inheritdoc/>
    public Complex ImpedanceOhm(double frequencyHz)
    {
        double x = Math.Log(frequencyHz);
        int cell = Cell(x);
        return new Complex(resistanceOhm.At(logHz, cell, x), 2 * Math.PI * frequencyHz * inductanceH.At(logHz, cell, x));
    }

    /// <summary>Number of the entry at or below x: −1 below the tables, the last one at and above their end.</summary>
    private int Cell(double x)
    {
        int found = Array.BinarySearch(logHz, x);
        return found >= 0 ? found : ~found - 1;
    }

    /// <summary>One column with the slopes of its cubic.</summary>
    private readonly struct Track
    {
        private readonly double[] value;
        private readonly double[] slope;

        public Track(double[] x, IReadOnlyList<double> column, double min, double max)
        {
            value = new double[x.Length];
            for (int i = 0; i < x.Length; i++)
            {
                value[i] = Require.InRange(column[i], min, max, nameof(column));
            }

            slope = new double[x.Length];
            for (int i = 1; i < x.Length - 1; i++)
            {
                double h0 = x[i] - x[i - 1],
                    h1 = x[i + 1] - x[i];
                double d0 = (value[i] - value[i - 1]) / h0,
                    d1 = (value[i + 1] - value[i]) / h1;
                double w0 = 2 * h1 + h0,
                    w1 = h1 + 2 * h0;
                slope[i] = d0 * d1 > 0 ? (w0 + w1) / (w0 / d0 + w1 / d1) : 0;
            }

            if (x.Length > 1)
            {
                slope[0] = EndSlope(x, 0, 1);
                slope[^1] = EndSlope(x, x.Length - 1, x.Length - 2);
            }
        }

        public double At(double[] x, int cell, double at)
        {
            if (cell < 0 || cell >= x.Length - 1)
            {
                return value[cell < 0 ? 0 : x.Length - 1];
            }

            double h = x[cell + 1] - x[cell],
                t = (at - x[cell]) / h,
                u = 1 - t;
            return u * u * ((1 + 2 * t) * value[cell] + t * h * slope[cell])
                + t * t * ((1 + 2 * u) * value[cell + 1] - u * h * slope[cell + 1]);
        }

        /// <summary>
        /// Slope that lets the end cell be a parabola, held between 0 and three times the chord so that it cannot overshoot.
        /// </summary>
        private double EndSlope(double[] x, int end, int next)
        {
            double chord = (value[next] - value[end]) / (x[next] - x[end]);
            double parabola = x.Length > 2 ? 2 * chord - slope[next] : chord;
            return chord > 0 ? Math.Clamp(parabola, 0, 3 * chord) : Math.Clamp(parabola, 3 * chord, 0);
        }
    }
}
