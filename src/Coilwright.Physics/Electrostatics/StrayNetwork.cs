using Coilwright.Physics.Winding;

namespace Coilwright.Physics.Electrostatics;

/// <summary>
/// Puts potentials on windings and grounded parts, finds those of the parts that float, and adds up the energy across the pickup's wires.
/// </summary>
internal sealed class StrayNetwork
{
    private const int Sweeps = 40;

    /// <summary>Field about the ends of two parts that face each other: their facing area counts for more. Assumption.</summary>
    private const double FacingEdges = 1.5;

    private readonly StrayField _field;
    private readonly double[,] _partsF;

    public StrayNetwork(StrayField field)
    {
        _field = field;
        _partsF = new double[field.Groups, field.Groups];
        for (int i = 0; i < field.Parts.Count; i++)
        {
            for (int j = 0; j < i; j++)
            {
                Face(field.Parts[i], field.Parts[j]);
            }
        }
    }

    /// <summary>Energy of the windings against metal, each other and their own free faces, across the pickup's wires, F.</summary>
    /// <param name="which">Set of assumptions, in the order of <see cref="StrayCase.All"/>.</param>
    /// <param name="coils">Shares of the voltage at each coil's ends.</param>
    /// <param name="metalCounts">False for a coil whose metal is in its measured capacitance.</param>
    /// <param name="unsaidGrounded">What is taken of parts whose grounding nobody said; null takes the usual.</param>
    public (double MetalF, double BetweenF, double OwnF) Energy(
        int which,
        IReadOnlyList<CoilVoltage> coils,
        IReadOnlyList<bool> metalCounts,
        bool? unsaidGrounded
    )
    {
        double[] potentials = Potentials(which, coils, unsaidGrounded);
        double metalF = 0,
            betweenF = 0,
            ownF = 0;
        for (int c = 0; c < coils.Count; c++)
        {
            for (int g = 0; g < _field.Groups && metalCounts[c]; g++)
            {
                metalF += _field.ToGroups[c, g].Energy(which, coils[c], potentials[g]);
            }

            double drop = metalCounts[c] ? coils[c].Finish - coils[c].Start : 0;
            ownF += _field.OwnF[c] * drop * drop;
            for (int other = 0; other < c; other++)
            {
                double apart = coils[c].Finish - coils[other].Finish;
                betweenF += _field.BetweenF[c, other, which] * apart * apart;
            }
        }

        for (int g = 0; g < _field.Groups && metalCounts.Contains(true); g++)
        {
            for (int other = 0; other < g; other++)
            {
                double apart = potentials[g] - potentials[other];
                metalF += _partsF[g, other] * apart * apart;
            }
        }

        return (metalF, betweenF, ownF);
    }

    /// <summary>Grounded groups stand at zero; what floats takes the potential at which it carries no charge.</summary>
    private double[] Potentials(int which, IReadOnlyList<CoilVoltage> coils, bool? unsaidGrounded)
    {
        double[] potentials = new double[_field.Groups];
        bool[] grounded = new bool[_field.Groups];
        foreach (StrayPart part in _field.Parts)
        {
            grounded[part.Group] |= part.Grounded ?? unsaidGrounded ?? part.UsuallyGrounded;
        }

        for (int sweep = 0; sweep < Sweeps; sweep++)
        {
            for (int g = 0; g < potentials.Length; g++)
            {
                if (!grounded[g])
                {
                    potentials[g] = Floating(which, coils, potentials, g);
                }
            }
        }

        return potentials;
    }

    private double Floating(int which, IReadOnlyList<CoilVoltage> coils, double[] potentials, int group)
    {
        double charge = 0,
            farad = 0;
        for (int c = 0; c < coils.Count; c++)
        {
            charge += _field.ToGroups[c, group].Charge(which, coils[c]);
            farad += _field.ToGroups[c, group].Farad(which);
        }

        for (int other = 0; other < potentials.Length; other++)
        {
            charge += _partsF[group, other] * potentials[other];
            farad += _partsF[group, other];
        }

        return farad > 0 ? charge / farad : 0;
    }

    /// <summary>Two parts above each other that do not touch: their overlap over the gap, in air.</summary>
    private void Face(StrayPart a, StrayPart b)
    {
        if (a.Group == b.Group)
        {
            return;
        }

        double gapM = Math.Max(GapM(a, b), GapM(b, a));
        double areaM2 =
            Overlap(a.Plan.XM, a.Plan.HalfXM, b.Plan.XM, b.Plan.HalfXM) * Overlap(a.Plan.YM, a.Plan.HalfYM, b.Plan.YM, b.Plan.HalfYM);
        if (gapM <= 0 || areaM2 <= 0)
        {
            return;
        }

        double farad = FacingEdges * LayCapacitance.VacuumPermittivity * areaM2 / gapM;
        _partsF[a.Group, b.Group] += farad;
        _partsF[b.Group, a.Group] += farad;
    }

    private static double GapM(StrayPart upper, StrayPart lower) => upper.FacingDownM - lower.TopM;

    private static double Overlap(double a, double halfA, double b, double halfB) =>
        Math.Max(0, Math.Min(a + halfA, b + halfB) - Math.Max(a - halfA, b - halfB));
}
