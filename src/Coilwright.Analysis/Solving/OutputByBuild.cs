using Coilwright.Analysis.Forecasts;
using Coilwright.Physics;
using Coilwright.Physics.BoundaryElements;

namespace Coilwright.Analysis.Solving;

/// <summary>Output per turn of the first coil against its build: the strings solved over three builds, a parabola through them.</summary>
/// <remarks>
/// The build moves the output by a few per cent only, smoothly; coils in parallel share their current as at the family's own turns.
/// </remarks>
internal sealed class OutputByBuild
{
    private readonly double[] _buildM = new double[3];
    private readonly double[] _perTurn = new double[3];

    public OutputByBuild(PickupModel family, FieldProblem problem, double lowRatio, double highRatio, CancellationToken cancel)
    {
        double[] ohm = [.. family.Coils.Select((coil, c) => ForecastScene.WoundOf(family, c).DcResistanceOhm(family.TemperatureC))];
        for (int k = 0; k < 3; k++)
        {
            double ratio = lowRatio + (highRatio - lowRatio) * k / 2;
            FieldProblem there = problem with
            {
                FrequenciesHz = [],
                Coils = [.. problem.Coils.Select(coil => coil with { BuildM = coil.BuildM * ratio })],
            };
            StringsOver strings = StringsOver.Solve(
                family,
                new FastFieldEngine().Solve(there, cancel),
                ohm,
                ForecastScene.FastSegments,
                cancel
            )!;
            _buildM[k] = there.Coils[0].BuildM;
            _perTurn[k] = NamedQuantity.OutputOf(strings.Answers.Select(answer => answer.VerticalWbPerM)) / family.Coils[0].Winding.Turns;
        }
    }

    /// <summary>V·s/m per turn of the first coil.</summary>
    public double At(double buildM)
    {
        double sum = 0;
        for (int k = 0; k < 3; k++)
        {
            double weight = 1;
            for (int other = 0; other < 3; other++)
            {
                weight *= other == k ? 1 : (buildM - _buildM[other]) / (_buildM[k] - _buildM[other]);
            }

            sum += weight * _perTurn[k];
        }

        return sum;
    }
}
