using System.Numerics;
using Coilwright.Analysis.Forecasts;
using Coilwright.Analysis.Solving;
using Coilwright.Physics;
using Coilwright.Physics.Fields;

namespace Coilwright.Analysis.Originals;

/// <summary>Inductance of a pickup per turn squared against the build of its coils, with the scatter that its cores leave, at a few frequencies.</summary>
internal sealed class CoreTable
{
    private const int Steps = 96;
    private readonly double _lowM;
    private readonly double _stepM;
    private readonly double[][] _perTurn;
    private readonly double[] _spread = new double[Steps + 1];

    public CoreTable(PickupModel model, IReadOnlyList<double> frequenciesHz, double lowM, double highM, CancellationToken cancel)
    {
        const double BaseM = 3e-3;
        FieldProblem problem = ForecastScene.ProblemOf(model, [.. model.Coils.Select((_, c) => ForecastScene.WoundOf(model, c))], frequenciesHz);
        problem = problem with { Coils = [.. problem.Coils.Select(coil => coil with { BuildM = BaseM, Turns = 1 })] };
        FieldByBuild field = new(new FastFieldEngine(), problem, lowM / BaseM, highM / BaseM, cancel);
        (_lowM, _stepM) = (lowM, (highM - lowM) / Steps);
        _perTurn = [.. frequenciesHz.Select(_ => new double[Steps + 1])];
        for (int k = 0; k <= Steps; k++)
        {
            FieldSolution at = field.Solve(problem with { Coils = [.. problem.Coils.Select(coil => coil with { BuildM = lowM + k * _stepM })] }, cancel);
            for (int f = 0; f < frequenciesHz.Count; f++)
            {
                _perTurn[f][k] = Joined(model, (i, j) => at.SpectrumH[f][i, j].Real);
            }

            double middle = Joined(model, (i, j) => at.StaticInductanceH[i, j]);
            _spread[k] = (Joined(model, (i, j) => at.StaticInductanceH[i, j] + at.InductanceSpreadH[i, j]) - middle) / middle;
        }
    }

    /// <summary>H per turn squared at a build.</summary>
    public double PerTurn(int frequency, double buildM) => Between(_perTurn[frequency], buildM);

    /// <summary>Half of the 95 % interval as a part of the inductance.</summary>
    public double Spread(double buildM) => Between(_spread, buildM);

    private double Between(double[] values, double buildM)
    {
        double place = Math.Clamp((buildM - _lowM) / _stepM, 0, Steps);
        int below = Math.Min((int)place, Steps - 1);
        return values[below] + (place - below) * (values[below + 1] - values[below]);
    }

    private static double Joined(PickupModel model, Func<int, int, double> henry) =>
        CoilNetwork.Join(model.Connection, model.Coils.Count, (i, j) => new Complex(0, henry(i, j))).Imaginary;
}
