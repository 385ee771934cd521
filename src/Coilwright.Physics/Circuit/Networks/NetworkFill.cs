using System.Numerics;

namespace Coilwright.Physics.Circuit.Networks;

/// <summary>Writes a network's matrix at a block of frequencies: which unknowns there are, and what each part adds.</summary>
internal sealed class NetworkFill
{
    /// <summary>Where a real branch's resistance at rest is read.</summary>
    private const double AtRestHz = 1e-3;

    private readonly double[] conductance;
    private readonly double[] capacitance;
    private readonly List<Pair> pairs = [];
    private readonly List<Coil> coils = [];
    private readonly double[] drives;
    private readonly int branches;

    public NetworkFill(NetworkSketch sketch, int output)
    {
        branches = sketch.Branches.Count;
        int[] unknown = Number(sketch, output, branches, out int count);
        int Of(int node) => unknown[sketch.Root(node)];
        Plan = new SolvePlan(
            count,
            branches,
            Entries(sketch, Of),
            Enumerable.Range(0, branches).Where(i => Math.Abs(sketch.Branches[i].Level) > 0)
        );
        conductance = new double[Plan.Filled];
        capacitance = new double[Plan.Filled];
        drives = new double[count];
        foreach (PlainPart part in sketch.Plain)
        {
            Add(part, Of(part.A), Of(part.B));
        }

        for (int i = 0; i < branches; i++)
        {
            BranchPart branch = sketch.Branches[i];
            Wire(i, Of(branch.A), 1);
            Wire(i, Of(branch.B), -1);
            coils.Add(new Coil(Plan.Slot(i, i), branch.Source, branch.Share * branch.Share, branch.Share * RestOhm(branch)));
            drives[i] = -branch.Level;
        }

        foreach (CouplingPart coupling in sketch.Couplings)
        {
            int slot = Plan.Slot(coupling.First, coupling.Second);
            BranchPart first = sketch.Branches[coupling.First],
                second = sketch.Branches[coupling.Second];
            if (coupling.InductanceH is { } henry)
            {
                capacitance[slot] -= henry; // ω·(−M), as a capacitance is ω·C
            }
            else
            {
                coils.Add(new Coil(slot, first.Source, first.Share * second.Share, 0));
            }
        }

        Steps = Plan.Steps(Constants());
    }

    public SolvePlan Plan { get; }

    public SolvePlan.Step[] Steps { get; }

    /// <summary>Fills all places of the plan.</summary>
    public void Write(Span<Vector<double>> places, int width, ReadOnlySpan<double> frequenciesHz, int vectors)
    {
        Span<Vector<double>> omega = stackalloc Vector<double>[vectors];
        for (int v = 0; v < vectors; v++)
        {
            omega[v] = new Vector<double>(frequenciesHz[(v * Vector<double>.Count)..]) * (2 * Math.PI);
        }

        for (int slot = 0; slot < Plan.Filled; slot++)
        {
            Span<Vector<double>> re = places.Slice(2 * slot * width, vectors),
                im = places.Slice((2 * slot + 1) * width, vectors);
            re.Fill(new Vector<double>(conductance[slot]));
            double farad = capacitance[slot];
            for (int v = 0; v < im.Length; v++)
            {
                im[v] = omega[v] * farad;
            }
        }

        // Entries that only the elimination makes begin at 0, as do the right-hand sides of nodes.
        places[(2 * Plan.Filled * width)..(2 * Plan.Reciprocal * width)].Clear();
        for (int i = 0; i < branches; i++)
        {
            places.Slice(2 * Plan.Drive(i) * width, vectors).Fill(new Vector<double>(drives[i]));
        }

        WritePairs(places, width, omega);
        foreach (Coil coil in coils)
        {
            Write(places, width, omega, frequenciesHz, coil);
        }
    }

    private sealed record Pair(double Ohm, double F, (int Slot, double Sign)[] Slots);

    private sealed record Coil(int Slot, ISeriesBranch Source, double Share, double RestOhm)
    {
        public EddyBranch[] Eddy { get; } = Source is LumpedPickup lumped ? [.. lumped.Eddy.Where(eddy => eddy.ResistanceOhm > 0)] : [];
    }

    /// <summary>Entries without capacitance, pair or coil, and the right-hand sides.</summary>
    private Dictionary<int, double> Constants()
    {
        Dictionary<int, double> constant = [];
        HashSet<int> changing = [.. coils.Select(coil => coil.Slot), .. pairs.SelectMany(pair => pair.Slots.Select(slot => slot.Slot))];
        for (int slot = 0; slot < Plan.Filled; slot++)
        {
            if (!changing.Contains(slot) && !(Math.Abs(capacitance[slot]) > 0))
            {
                constant[slot] = conductance[slot];
            }
        }

        for (int i = 0; i < drives.Length; i++)
        {
            constant[-3 - i] = drives[i];
        }

        return constant;
    }

    /// <summary>Unknown of each node that stands for itself: −1 for ground and for nodes without parts; the output last.</summary>
    private static int[] Number(NetworkSketch sketch, int output, int branches, out int count)
    {
        HashSet<int> used = [];
        foreach (PlainPart part in sketch.Plain)
        {
            used.UnionWith([sketch.Root(part.A), sketch.Root(part.B)]);
        }

        foreach (BranchPart branch in sketch.Branches)
        {
            used.UnionWith([sketch.Root(branch.A), sketch.Root(branch.B)]);
        }

        int[] unknown = new int[sketch.NodeCount];
        Array.Fill(unknown, -1);
        count = branches;
        foreach (int node in used.Where(node => node != NetworkSketch.Ground && node != sketch.Root(output)).Order())
        {
            unknown[node] = count++;
        }

        if (sketch.Root(output) != NetworkSketch.Ground)
        {
            unknown[sketch.Root(output)] = count++;
        }

        return unknown;
    }

    private static IEnumerable<(int, int)> Entries(NetworkSketch sketch, Func<int, int> of)
    {
        foreach (PlainPart part in sketch.Plain.Where(part => of(part.A) >= 0 && of(part.B) >= 0))
        {
            yield return (of(part.A), of(part.B));
        }

        for (int i = 0; i < sketch.Branches.Count; i++)
        {
            foreach (int node in ((int[])[of(sketch.Branches[i].A), of(sketch.Branches[i].B)]).Where(node => node >= 0))
            {
                yield return (i, node);
            }
        }

        foreach (CouplingPart coupling in sketch.Couplings)
        {
            yield return (coupling.First, coupling.Second);
        }
    }

    private static double RestOhm(in BranchPart branch) =>
        branch.Source is LumpedPickup lumped ? lumped.ResistanceOhm : branch.Source.ImpedanceOhm(AtRestHz).Real;

    private void Wire(int branch, int node, double sign)
    {
        if (node >= 0)
        {
            conductance[Plan.Slot(branch, node)] += sign;
        }
    }

    private void Add(in PlainPart part, int a, int b)
    {
        if (a == b)
        {
            return;
        }

        List<(int, double)> slots = [];
        if (a >= 0)
        {
            slots.Add((Plan.Slot(a, a), 1));
        }

        if (b >= 0)
        {
            slots.Add((Plan.Slot(b, b), 1));
        }

        if (a >= 0 && b >= 0)
        {
            slots.Add((Plan.Slot(a, b), -1));
        }

        if (part is { Ohm: > 0, F: > 0 })
        {
            pairs.Add(new Pair(part.Ohm, part.F, [.. slots]));
            return;
        }

        foreach ((int slot, double sign) in slots)
        {
            conductance[slot] += part.Ohm > 0 ? sign / part.Ohm : 0;
            capacitance[slot] += sign * part.F;
        }
    }

    /// <summary>jωC/(1 + jωRC).</summary>
    private void WritePairs(Span<Vector<double>> places, int width, Span<Vector<double>> omega)
    {
        foreach (Pair pair in pairs)
        {
            foreach ((int slot, double sign) in pair.Slots)
            {
                Span<Vector<double>> re = places.Slice(2 * slot * width, omega.Length),
                    im = places.Slice((2 * slot + 1) * width, omega.Length);
                for (int v = 0; v < omega.Length; v++)
                {
                    Vector<double> x = omega[v] * pair.F,
                        y = x * pair.Ohm,
                        scale = sign * x / (y * y + Vector<double>.One);
                    re[v] += scale * y;
                    im[v] += scale;
                }
            }
        }
    }

    /// <summary>
    /// Minus a branch's impedance, or the flux that two branches share: its resistance at rest by the share of the wire, all that is flux
    /// by the share of the turns squared.
    /// </summary>
    private static void Write(
        Span<Vector<double>> places,
        int width,
        Span<Vector<double>> omega,
        ReadOnlySpan<double> frequenciesHz,
        Coil coil
    )
    {
        (int slot, ISeriesBranch source, double share, double ohm) = coil;
        Span<Vector<double>> re = places.Slice(2 * slot * width, omega.Length),
            im = places.Slice((2 * slot + 1) * width, omega.Length);
        if (source is not LumpedPickup lumped)
        {
            double rest = source.ImpedanceOhm(AtRestHz).Real;
            Span<double> r = stackalloc double[Vector<double>.Count],
                x = stackalloc double[Vector<double>.Count];
            for (int v = 0; v < omega.Length; v++)
            {
                for (int lane = 0; lane < r.Length; lane++)
                {
                    Complex z = source.ImpedanceOhm(frequenciesHz[v * r.Length + lane]);
                    (r[lane], x[lane]) = (-ohm - share * (z.Real - rest), -share * z.Imaginary);
                }

                re[v] += new Vector<double>(r);
                im[v] += new Vector<double>(x);
            }

            return;
        }

        double henry = share * lumped.InductanceH;
        for (int v = 0; v < omega.Length; v++)
        {
            re[v] -= new Vector<double>(ohm);
            im[v] -= omega[v] * henry;
        }

        foreach (EddyBranch eddy in coil.Eddy)
        {
            Vector<double> squared = new(eddy.ResistanceOhm * eddy.ResistanceOhm);
            for (int v = 0; v < omega.Length; v++)
            {
                Vector<double> x = omega[v] * eddy.InductanceH,
                    part = x * (share * eddy.ResistanceOhm) / (x * x + squared);
                re[v] -= part * x;
                im[v] -= part * eddy.ResistanceOhm;
            }
        }
    }
}
