namespace Coilwright.Analysis.Curves;

/// <summary>A sum of squares to be made least.</summary>
/// <param name="parameters">Where.</param>
/// <param name="residuals">Receives the residuals.</param>
/// <param name="jacobian">Receives their derivatives, one column after the other, each as long as the residuals; empty when not asked
/// for.</param>
public delegate void LeastSquaresProblem(ReadOnlySpan<double> parameters, Span<double> residuals, Span<double> jacobian);
