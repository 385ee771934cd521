using System.Numerics;

namespace Coilwright.Physics.Fields;

/// <summary>First model of pole parts in a coil: each is magnetised along z by the coil's field, against its own demagnetising field.</summary>
/// <remarks>
/// ΔL = µ0·Σ χ/(1 + Nχ)·V·⟨h_i⟩⟨h_j⟩ with h the coil's axial field per ampere on the axis and N the magnetometric factor for the part's own slimness
/// and permeability. Coupling between poles and the shape of the magnetisation are left out; the error against independent solutions is measured in
/// the tests and carried in <see cref="ModelError"/>.
/// </remarks>
internal static class RodCores
{
    /// <summary>95 % error of the cores' part of the inductance: single rods and rows of rods, µ 1.05…500, against finite elements.</summary>
    public const double ModelError = 0.30;

    private static readonly double[] Gauss = [-0.9061798459386640, -0.5384693101056831, 0, 0.5384693101056831, 0.9061798459386640];
    private static readonly double[] Weight = [0.1184634425280945, 0.2393143352496832, 0.2844444444444444, 0.2393143352496832, 0.1184634425280945];

    /// <summary>Magnetometric demagnetising factor of a cylinder along its axis.</summary>
    /// <remarks>1/(4g/√π + 1) for χ → 0 (Sato and Ishii 1989, from memory), lowered for permeable parts by a fit to surface-charge solutions (derived).</remarks>
    public static double Demagnetising(double slimness, Complex susceptibility)
    {
        double drop = Math.Min(0.12 + 0.05 * slimness, 0.45), size = susceptibility.Magnitude;
        return (1 - drop * size / (size + 2)) / (4 * slimness / Math.Sqrt(Math.PI) + 1);
    }

    /// <summary>χ/(1 + Nχ) of one part at a frequency; 0 Hz for the static value.</summary>
    public static Complex Apparent(PoleModel pole, double relativePermeability, double frequencyHz)
    {
        Complex chi = CylinderPermeability.Effective(relativePermeability, pole.ConductivitySPerM.Value, pole.DiameterM / 2, frequencyHz) - 1;
        return chi / (1 + Demagnetising(pole.LengthM / EquivalentDiameterM(pole), chi) * chi);
    }

    public static double VolumeM3(PoleModel pole) => pole.LengthM * SectionM2(pole);

    /// <summary>Mean of a coil's axial field per ampere-turn along a pole's axis, 1/m.</summary>
    public static double MeanFieldPerM(IReadOnlyList<(TurnContour Turn, double ZM)> turns, double xM, double yM, double topM, double lengthM)
    {
        double sum = 0;
        for (int g = 0; g < Gauss.Length; g++)
        {
            double z = topM - lengthM / 2 + Gauss[g] * lengthM / 2;
            double field = 0;
            foreach ((TurnContour turn, double turnZ) in turns)
            {
                field += turn.AxialFieldPerM(xM, yM, z - turnZ);
            }

            sum += Weight[g] * field / turns.Count;
        }

        return sum;
    }

    /// <summary>Turns that stand for a coil's section when its field is wanted inside it.</summary>
    public static IReadOnlyList<(TurnContour Turn, double ZM)> Turns(FieldCoil coil)
    {
        List<(TurnContour, double)> turns = [];
        foreach (double place in (double[])[0.2113, 0.7887])
        {
            TurnContour turn = new(coil.Bobbin, place * coil.BuildM);
            for (int k = 0; k < 6; k++)
            {
                turns.Add((turn, ((k + 0.5) / 6 - 0.5) * coil.Bobbin.WindingHeightM));
            }
        }

        return turns;
    }

    private static double SectionM2(PoleModel pole) =>
        pole.Shape == PoleShape.Blade ? pole.DiameterM * pole.WidthM : Math.PI / 4 * pole.DiameterM * pole.DiameterM;

    private static double EquivalentDiameterM(PoleModel pole) => Math.Sqrt(4 / Math.PI * SectionM2(pole));
}
