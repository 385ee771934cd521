using System.Numerics;

namespace Coilwright.Physics.Fields;

/// <summary>Air inductance by integration over the section; pole parts by the first core model, with an interval as wide as its measured error.</summary>
public sealed class FastFieldEngine : IFieldEngine
{
    private const double Mu0 = 4e-7 * Math.PI;

    /// <inheritdoc/>
    public string Name => "fast";

    /// <inheritdoc/>
    public FieldSolution Solve(FieldProblem problem, CancellationToken cancel = default)
    {
        int coils = problem.Coils.Count;
        double[,] air = new double[coils, coils];
        double[] byBuild = new double[coils];
        for (int i = 0; i < coils; i++)
        {
            cancel.ThrowIfCancellationRequested();
            FieldCoil coil = problem.Coils[i];
            double squared = coil.Turns * coil.Turns, thinner = coil.BuildM * 0.98;
            air[i, i] = squared * AirInductance.SelfPerTurnSquaredH(coil.Bobbin, coil.BuildM);
            byBuild[i] = (air[i, i] - squared * AirInductance.SelfPerTurnSquaredH(coil.Bobbin, thinner)) / (coil.BuildM - thinner);
            for (int j = 0; j < i; j++)
            {
                FieldCoil other = problem.Coils[j];
                air[i, j] = coil.Turns * coil.Sign * other.Turns * other.Sign * AirInductance.MutualPerTurnsH(coil, other);
                air[j, i] = air[i, j];
            }
        }

        List<(PoleModel Pole, double[] Coupling)> poles = [.. Poles(problem)];
        double[,] fixedCores = Real(Cores(poles, coils, pole => RodCores.Apparent(pole, pole.RelativePermeability.Value, 0)));
        double[,] low = Real(Cores(poles, coils, pole => RodCores.Apparent(pole, Math.Max(1, pole.RelativePermeability.Low), 0)));
        double[,] high = Real(Cores(poles, coils, pole => RodCores.Apparent(pole, pole.RelativePermeability.High, 0)));
        return new FieldSolution
        {
            AirInductanceH = air,
            StaticInductanceH = Each(coils, (i, j) => air[i, j] + fixedCores[i, j]),
            InductanceSpreadH = Each(coils, (i, j) => Spread(problem, air[i, j], fixedCores[i, j], high[i, j] - low[i, j])),
            SpectrumH = [.. problem.FrequenciesHz.Select(f => Spectrum(air, poles, coils, f))],
            AirInductanceByBuildHPerM = byBuild,
            EffectiveAreaM2 = [.. problem.Coils.Select((coil, c) => Area(coil, c, poles))],
            Notes = [.. Notes(problem)],
        };
    }

    private static Complex[,] Spectrum(double[,] air, List<(PoleModel Pole, double[] Coupling)> poles, int coils, double frequencyHz)
    {
        Complex[,] cores = Cores(poles, coils, pole => RodCores.Apparent(pole, pole.RelativePermeability.Value, frequencyHz));
        Complex[,] sum = new Complex[coils, coils];
        for (int i = 0; i < coils; i++)
        {
            for (int j = 0; j < coils; j++)
            {
                sum[i, j] = air[i, j] + cores[i, j];
            }
        }

        return sum;
    }

    /// <summary>Every pole with the volume-weighted field that each coil makes along its axis, per ampere.</summary>
    private static IEnumerable<(PoleModel Pole, double[] Coupling)> Poles(FieldProblem problem)
    {
        IReadOnlyList<(TurnContour Turn, double ZM)>[] turns = [.. problem.Coils.Select(coil => coil.Poles.Count + problem.Coils.Sum(c => c.Poles.Count) > 0 ? RodCores.Turns(coil) : [])];
        foreach (FieldCoil owner in problem.Coils)
        {
            foreach (PoleModel pole in owner.Poles)
            {
                for (int p = 0; p < pole.PositionsM.Count; p++)
                {
                    double[] coupling = new double[problem.Coils.Count];
                    for (int c = 0; c < coupling.Length; c++)
                    {
                        FieldCoil coil = problem.Coils[c];
                        coupling[c] = coil.Turns * coil.Sign * RodCores.MeanFieldPerM(turns[c],
                            owner.Position.XM + pole.PositionsM[p] - coil.Position.XM, owner.Position.YM - coil.Position.YM,
                            owner.Position.ZM + pole.TopsM[p] - coil.Position.ZM, pole.LengthM);
                    }

                    yield return (pole, coupling);
                }
            }
        }
    }

    private static Complex[,] Cores(List<(PoleModel Pole, double[] Coupling)> poles, int coils, Func<PoleModel, Complex> apparent)
    {
        Complex[,] sum = new Complex[coils, coils];
        Dictionary<PoleModel, Complex> strengths = new(ReferenceEqualityComparer.Instance);
        foreach ((PoleModel pole, double[] coupling) in poles)
        {
            if (!strengths.TryGetValue(pole, out Complex strength))
            {
                strength = Mu0 * RodCores.VolumeM3(pole) * apparent(pole);
                strengths[pole] = strength;
            }

            for (int i = 0; i < coils; i++)
            {
                for (int j = 0; j < coils; j++)
                {
                    sum[i, j] += strength * coupling[i] * coupling[j];
                }
            }
        }

        return sum;
    }

    private static double Spread(FieldProblem problem, double air, double cores, double permeability)
    {
        double model = RodCores.ModelError * cores;
        // Bars and sheets are not solved by this engine: what they may add or take is held in the interval.
        double missing = problem.Bars.Count + problem.Sheets.Count > 0 ? 0.10 * (Math.Abs(air) + Math.Abs(cores)) : 0;
        return Math.Sqrt(model * model + permeability * permeability / 4 + missing * missing);
    }

    private static double Area(FieldCoil coil, int c, List<(PoleModel Pole, double[] Coupling)> poles)
    {
        double own = coil.Turns * coil.Sign * AirInductance.MeanAreaM2(coil.Bobbin, coil.BuildM);
        return own + poles.Sum(pole => RodCores.VolumeM3(pole.Pole) * RodCores.Apparent(pole.Pole, pole.Pole.RelativePermeability.Value, 0).Real * pole.Coupling[c]);
    }

    private static IEnumerable<FieldNote> Notes(FieldProblem problem)
    {
        if (problem.Bars.Count > 0)
        {
            yield return new("magnets", "bar magnets and keepers are not solved yet: they widen the inductance interval by 10 %");
        }

        if (problem.Sheets.Count > 0)
        {
            yield return new("metalwork", "covers and plates are not solved yet: they widen the inductance interval by 10 % and their loss is missing");
        }
    }

    private static double[,] Real(Complex[,] matrix) => Each(matrix.GetLength(0), (i, j) => matrix[i, j].Real);

    private static double[,] Each(int coils, Func<int, int, double> element)
    {
        double[,] matrix = new double[coils, coils];
        for (int i = 0; i < coils; i++)
        {
            for (int j = 0; j < coils; j++)
            {
                matrix[i, j] = element(i, j);
            }
        }

        return matrix;
    }
}
