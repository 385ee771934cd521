using System.Numerics;
using Coilwright.Physics.BoundaryElements;

namespace Coilwright.Analysis.Solving;

/// <summary>
/// A field engine for one geometry with any wire and any turns: solves at a few builds, and a polynomial through them gives the rest.
/// </summary>
/// <remarks>
/// Everything the field gives goes exactly with turns (inductance by pairs of turns, area by turns) and depends on the wire through the
/// build alone.
/// The map in space is that of one node. Nodes are Chebyshev's in the build relative to the base, the interpolation is barycentric. Outside
/// the nodes the ends hold. Coils whose builds stray from the base's ratio are taken pair by pair.
/// </remarks>
internal sealed class FieldVersusBuild : IFieldEngine
{
    private const int Nodes = 7;
    private readonly double[] _baseM;
    private readonly double[] _at = new double[Nodes];
    private readonly double[] _weight = new double[Nodes];
    private readonly double[][] _values = new double[Nodes][];
    private readonly double _low;
    private readonly double _high;
    private readonly int _coils;
    private readonly int _frequencies;
    private readonly FieldMap _map;
    private readonly IReadOnlyList<FieldNote> _notes;

    public FieldVersusBuild(IFieldEngine inner, FieldProblem problem, double lowRatio, double highRatio, CancellationToken cancel)
    {
        _coils = problem.Coils.Count;
        _frequencies = problem.FrequenciesHz.Count;
        (_low, _high) = (lowRatio, highRatio);
        _baseM = [.. problem.Coils.Select(coil => coil.BuildM)];
        FieldSolution? solved = null;
        for (int k = 0; k < Nodes; k++)
        {
            double angle = (2 * k + 1) * Math.PI / (2 * Nodes);
            _at[k] = (lowRatio + highRatio) / 2 + (highRatio - lowRatio) / 2 * Math.Cos(angle);
            _weight[k] = (k % 2 == 0 ? 1 : -1) * Math.Sin(angle);
            solved = inner.Solve(
                problem with
                {
                    Coils = [.. problem.Coils.Select((coil, c) => coil with { BuildM = _baseM[c] * _at[k], Turns = 1 })],
                },
                cancel
            );
            _values[k] = Flat(solved);
        }

        (_map, _notes) = (solved!.Map, solved.Notes);
    }

    public string Name => "by build";

    public FieldSolution Solve(FieldProblem problem, CancellationToken cancel = default)
    {
        double[] ratio = [.. problem.Coils.Select((coil, c) => coil.BuildM / _baseM[c])],
            turns = [.. problem.Coils.Select(coil => coil.Turns)];
        double[]?[,] pairs = new double[_coils, _coils][];
        double[] common = At(ratio[0]);
        bool alike = ratio.All(value => Math.Abs(value - ratio[0]) < 1e-6);
        for (int i = 0; i < _coils; i++)
        {
            for (int j = i; j < _coils; j++)
            {
                pairs[i, j] = pairs[j, i] = alike ? common : At((ratio[i] + ratio[j]) / 2);
            }
        }

        int block = _coils * _coils;
        double[,] Matrix(int part)
        {
            double[,] matrix = new double[_coils, _coils];
            for (int k = 0; k < block; k++)
            {
                (int i, int j) = (k / _coils, k % _coils);
                matrix[i, j] = pairs[i, j]![part * block + k] * turns[i] * turns[j];
            }

            return matrix;
        }

        int vectors = block * (3 + 4 * _frequencies);
        return new FieldSolution
        {
            AirInductanceH = Matrix(0),
            StaticInductanceH = Matrix(1),
            InductanceSpreadH = Matrix(2),
            SpectrumH = [.. Enumerable.Range(0, _frequencies).Select(f => Join(Matrix(3 + 2 * f), Matrix(4 + 2 * f)))],
            AirInductanceByBuildHPerM = [.. turns.Select((count, c) => pairs[c, c]![vectors + c] * count * count)],
            EffectiveAreaM2 = [.. turns.Select((count, c) => pairs[c, c]![vectors + _coils + c] * count)],
            SpectrumSpreadH =
            [
                .. Enumerable
                    .Range(0, _frequencies)
                    .Select(f => Join(Matrix(3 + 2 * _frequencies + 2 * f), Matrix(4 + 2 * _frequencies + 2 * f))),
            ],
            AreaByBuildM2PerM = [.. turns.Select((count, c) => pairs[c, c]![vectors + 2 * _coils + c] * count)],
            AreaSpreadM2 = [.. turns.Select((count, c) => pairs[c, c]![vectors + 3 * _coils + c] * count)],
            Map = _map,
            Notes = _notes,
        };
    }

    private double[] At(double wanted)
    {
        double ratio = Math.Clamp(wanted, _low, _high);
        double[] sum = new double[_values[0].Length];
        double bottom = 0;
        for (int k = 0; k < Nodes; k++)
        {
            double distance = ratio - _at[k];
            if (Math.Abs(distance) < 1e-12)
            {
                return _values[k];
            }

            double weight = _weight[k] / distance;
            bottom += weight;
            double[] values = _values[k];
            for (int v = 0; v < sum.Length; v++)
            {
                sum[v] += weight * values[v];
            }
        }

        for (int v = 0; v < sum.Length; v++)
        {
            sum[v] /= bottom;
        }

        return sum;
    }

    private static double[] Flat(FieldSolution solution) =>
        [
            .. Rows(solution.AirInductanceH),
            .. Rows(solution.StaticInductanceH),
            .. Rows(solution.InductanceSpreadH),
            .. solution.SpectrumH.SelectMany(matrix => Rows(matrix, value => value.Real).Concat(Rows(matrix, value => value.Imaginary))),
            .. solution.SpectrumSpreadH.SelectMany(matrix =>
                Rows(matrix, value => value.Real).Concat(Rows(matrix, value => value.Imaginary))
            ),
            .. solution.AirInductanceByBuildHPerM,
            .. solution.EffectiveAreaM2,
            .. solution.AreaByBuildM2PerM,
            .. solution.AreaSpreadM2,
        ];

    private static IEnumerable<double> Rows(double[,] matrix) => matrix.Cast<double>();

    private static IEnumerable<double> Rows(Complex[,] matrix, Func<Complex, double> part) => matrix.Cast<Complex>().Select(part);

    private static Complex[,] Join(double[,] real, double[,] imaginary)
    {
        Complex[,] joined = new Complex[real.GetLength(0), real.GetLength(1)];
        for (int i = 0; i < joined.GetLength(0); i++)
        {
            for (int j = 0; j < joined.GetLength(1); j++)
            {
                joined[i, j] = new Complex(real[i, j], imaginary[i, j]);
            }
        }

        return joined;
    }
}
