namespace Coilwright.Analysis.Curves;

/// <summary>
/// What came of a least-squares fit. Look at <see cref="Converged"/> and at infinite deviations before using the parameters.
/// </summary>
/// <param name="Parameters">The best parameters found.</param>
/// <param name="ResidualSum">Sum of squared residuals there.</param>
/// <param name="ResidualCount">Number of residuals.</param>
/// <param name="Iterations">Steps tried.</param>
/// <param name="Converged">False when the steps ran out.</param>
/// <param name="Directions">How well each independent direction of the parameters is determined.</param>
public sealed record LeastSquaresFit(
    double[] Parameters,
    double ResidualSum,
    int ResidualCount,
    int Iterations,
    bool Converged,
    IReadOnlyList<FitDirection> Directions
)
{
    /// <summary>Residuals beyond the parameters, at least 1.</summary>
    public int FreedomCount => Math.Max(1, ResidualCount - Parameters.Length);

    /// <summary>Standard deviation of one residual.</summary>
    public double ResidualDeviation => Math.Sqrt(ResidualSum / FreedomCount);

    /// <summary>Covariance of two parameters: s²(JᵀJ)⁻¹; infinite for one that the data leave open.</summary>
    public double Covariance(int i, int j)
    {
        double sum = 0;
        foreach (FitDirection direction in Directions)
        {
            double share = direction.Vector[i] * direction.Vector[j];
            sum += Math.Abs(share) > 1e-12 || double.IsFinite(direction.Deviation) ? share * direction.Deviation * direction.Deviation : 0;
        }

        return sum;
    }

    /// <summary>Standard deviation of a parameter; infinite for one that the data leave open.</summary>
    /// <param name="i">Place of the parameter.</param>
    public double Deviation(int i) => Math.Sqrt(Covariance(i, i));
}

/// <summary>
/// A direction in the space of the parameters, and the standard deviation of a step along it; infinite where the residuals do not change.
/// </summary>
/// <param name="Vector">The direction, scaled so that outer products with the squared deviation add up to the covariance.</param>
/// <param name="Deviation">Standard deviation along it.</param>
public sealed record FitDirection(double[] Vector, double Deviation);
