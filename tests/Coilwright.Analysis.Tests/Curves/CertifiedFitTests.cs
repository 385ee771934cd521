using System.Numerics;
using System.Text.Json;
using Coilwright.Analysis.Curves;

namespace Coilwright.Analysis.Tests.Curves;

/// <summary>The fitter on NIST's certified nonlinear problems: tests/Reference/nist/README.md.</summary>
public sealed class CertifiedFitTests
{
    private const string Source = "NIST/ITL Statistical Reference Datasets, nonlinear regression [StRD]";
    private static readonly Problem[] s_problems = JsonSerializer.Deserialize<Problem[]>(
        File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Reference", "nist", "nonlinear.json")),
        JsonSerializerOptions.Web
    )!;

    public static TheoryData<string> Names => [.. s_problems.Select(problem => problem.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void From_the_nearer_start_parameters_deviations_and_residuals_are_the_certified_ones(string name)
    {
        Problem problem = s_problems.Single(one => one.Name == name);
        LeastSquaresFit fit = Fit(problem, problem.Start2);
        Assert.True(fit.Converged, $"{fit.Iterations} steps");
        Evidence check = Evidence.Outside(
            $"Fitter: {problem.Name}, parameters",
            Source,
            "read",
            problem.Name == "Lanczos1"
                ? "rounding: residuals of exact data, at the end of doubles"
                : "rounding: six of eleven certified digits"
        );
        for (int i = 0; i < problem.Certified.Length; i++)
        {
            check.WithinPart(fit.Parameters[i], problem.Certified[i], Tolerance(problem));
        }

        MustAgree(problem, fit);
        check.Record();
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void From_the_farther_start_it_reaches_the_same_minimum(string name)
    {
        Problem problem = s_problems.Single(one => one.Name == name);
        MustAgree(problem, Fit(problem, problem.Start1));
    }

    private static void MustAgree(Problem problem, LeastSquaresFit fit)
    {
        for (int i = 0; i < problem.Certified.Length; i++)
        {
            Assert.Equal(1, fit.Parameters[i] / problem.Certified[i], Tolerance(problem));
            if (problem.Name != "Lanczos1")
            {
                Assert.Equal(1, fit.Deviation(i) / problem.Deviation[i], 1e-4);
            }
        }

        if (problem.Name != "Lanczos1")
        {
            Assert.Equal(1, fit.ResidualSum / problem.ResidualSum, 1e-6);
        }
    }

    /// <summary>Six digits of the printed eleven, or as many as doubles can tell from the residuals of exact data.</summary>
    private static double Tolerance(Problem problem) => problem.Name == "Lanczos1" ? 1e-5 : 1e-6;

    private static LeastSquaresFit Fit(Problem problem, double[] start) =>
        LevenbergMarquardt.Minimise(
            (at, residuals, jacobian) =>
            {
                for (int k = 0; k < problem.Y.Length; k++)
                {
                    Complex[] b = [.. at.ToArray().Select(value => new Complex(value, 0))];
                    double y = problem.Name == "Nelson" ? Math.Log(problem.Y[k]) : problem.Y[k];
                    residuals[k] = Model(problem, b, k).Real - y;
                    for (int j = 0; j < b.Length && jacobian.Length > 0; j++)
                    {
                        // Derivative by a step along the imaginary axis: exact to rounding.
                        double step = 1e-20 * Math.Max(Math.Abs(at[j]), 1e-8);
                        b[j] += new Complex(0, step);
                        jacobian[j * problem.Y.Length + k] = Model(problem, b, k).Imaginary / step;
                        b[j] = at[j];
                    }
                }
            },
            problem.Y.Length,
            start,
            mostSteps: 5000
        );

    private static Complex Model(Problem problem, Complex[] b, int k)
    {
        double x = problem.X[k];
        Complex Exp(Complex z) => Complex.Exp(z);
        Complex Gauss(int i) => b[i] * Exp(-(x - b[i + 1]) * (x - b[i + 1]) / (b[i + 2] * b[i + 2]));
        return problem.Name switch
        {
            "Bennett5" => b[0] * Complex.Exp(-Complex.Log(b[1] + x) / b[2]),
            "BoxBOD" or "Misra1a" => b[0] * (1 - Exp(-b[1] * x)),
            "Chwirut1" or "Chwirut2" => Exp(-b[0] * x) / (b[1] + b[2] * x),
            "DanWood" => b[0] * Exp(b[1] * Math.Log(x)),
            "ENSO" => b[0]
                + b[1] * Math.Cos(2 * Math.PI * x / 12)
                + b[2] * Math.Sin(2 * Math.PI * x / 12)
                + b[4] * Complex.Cos(2 * Math.PI * x / b[3])
                + b[5] * Complex.Sin(2 * Math.PI * x / b[3])
                + b[7] * Complex.Cos(2 * Math.PI * x / b[6])
                + b[8] * Complex.Sin(2 * Math.PI * x / b[6]),
            "Eckerle4" => b[0] / b[1] * Exp(-0.5 * (x - b[2]) * (x - b[2]) / (b[1] * b[1])),
            "Gauss1" or "Gauss2" or "Gauss3" => b[0] * Exp(-b[1] * x) + Gauss(2) + Gauss(5),
            "Hahn1" or "Thurber" => (b[0] + x * (b[1] + x * (b[2] + x * b[3]))) / (1 + x * (b[4] + x * (b[5] + x * b[6]))),
            "Kirby2" => (b[0] + x * (b[1] + x * b[2])) / (1 + x * (b[3] + x * b[4])),
            "Lanczos1" or "Lanczos2" or "Lanczos3" => b[0] * Exp(-b[1] * x) + b[2] * Exp(-b[3] * x) + b[4] * Exp(-b[5] * x),
            "MGH09" => b[0] * (x * x + x * b[1]) / (x * x + x * b[2] + b[3]),
            "MGH10" => b[0] * Exp(b[1] / (x + b[2])),
            "MGH17" => b[0] + b[1] * Exp(-x * b[3]) + b[2] * Exp(-x * b[4]),
            "Misra1b" => b[0] * (1 - 1 / ((1 + b[1] * x / 2) * (1 + b[1] * x / 2))),
            "Misra1c" => b[0] * (1 - 1 / Complex.Sqrt(1 + 2 * b[1] * x)),
            "Misra1d" => b[0] * b[1] * x / (1 + b[1] * x),
            "Nelson" => b[0] - b[1] * x * Exp(-b[2] * problem.X2![k]),
            "Rat42" => b[0] / (1 + Exp(b[1] - b[2] * x)),
            "Rat43" => b[0] / Exp(Complex.Log(1 + Exp(b[1] - b[2] * x)) / b[3]),
            _ => throw new InvalidOperationException(problem.Name),
        };
    }

    private sealed record Problem(
        string Name,
        double[] Start1,
        double[] Start2,
        double[] Certified,
        double[] Deviation,
        double ResidualSum,
        double[] Y,
        double[] X,
        double[]? X2
    );
}
