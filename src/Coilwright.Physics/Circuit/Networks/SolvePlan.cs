namespace Coilwright.Physics.Circuit.Networks;

/// <summary>The elimination of one network worked out once: which entries exist, and the steps that reduce them to the output's.</summary>
/// <remarks>
/// Unknowns: the branch currents, then the node voltages, the output last. The matrix is symmetric, so only entries (i, j) with i ≤ j are
/// kept.
/// Branches are eliminated first, then the node with the fewest neighbours. No pivoting: the network is passive, so each pivot has the real
/// part of an
/// impedance or an admittance, never 0 with any loss. With the output last, its pivot is the admittance seen there.
/// </remarks>
internal sealed class SolvePlan
{
    private readonly Dictionary<(int, int), int> slots = [];
    private readonly HashSet<int>[] neighbours;
    private readonly bool[] driven;
    private readonly List<Step> steps = [];
    private readonly Dictionary<int, double> constants = [];
    private readonly int branches;

    /// <param name="unknowns">How many.</param>
    /// <param name="branches">The first so many are branch currents.</param>
    /// <param name="entries">Pairs of unknowns with an entry.</param>
    /// <param name="drives">Unknowns with a source.</param>
    public SolvePlan(int unknowns, int branches, IEnumerable<(int I, int J)> entries, IEnumerable<int> drives)
    {
        Unknowns = unknowns;
        neighbours = [.. Enumerable.Range(0, unknowns).Select(_ => new HashSet<int>())];
        driven = new bool[unknowns];
        for (int i = 0; i < unknowns; i++)
        {
            Slot(i, i);
        }

        foreach ((int i, int j) in entries.Where(entry => entry.I != entry.J))
        {
            Touch(i, j);
        }

        foreach (int i in drives)
        {
            driven[i] = true;
        }

        Filled = slots.Count;
        this.branches = branches;
    }

    /// <summary>What one step does to whole blocks of frequencies.</summary>
    internal enum Work
    {
        /// <summary>Target = 1/A.</summary>
        Invert,

        /// <summary>Target = A·B.</summary>
        Multiply,

        /// <summary>Target −= A·B.</summary>
        Subtract,

        /// <summary>Target = A·Factor, the factor being real and the same at every frequency.</summary>
        Scale,

        /// <summary>Target += A·Factor.</summary>
        Add,
    }

    internal readonly record struct Step(Work Work, int Target, int A, int B, double Factor = 0);

    public int Unknowns { get; }

    /// <summary>Entries that parts write; the rest begins at 0.</summary>
    public int Filled { get; }

    public int EntryCount => slots.Count;

    /// <summary>Place of the right-hand side of an unknown.</summary>
    public int Drive(int i) => EntryCount + i;

    /// <summary>A place for the pivot's reciprocal, and one for a factor.</summary>
    public int Reciprocal => EntryCount + Unknowns;

    public int Factor => Reciprocal + 1;

    public int PlaceCount => Factor + 1;

    public bool IsDriven(int i) => driven[i];

    /// <summary>
    /// The steps. Entries that are real and the same at every frequency, until a step changes them, are worked with as such.
    /// </summary>
    /// <param name="constant">Value of such entries by their place, and of right-hand sides by −3 − unknown.</param>
    public Step[] Steps(IReadOnlyDictionary<int, double> constant)
    {
        foreach ((int place, double value) in constant)
        {
            constants[place] = value;
        }

        HashSet<int> left = [.. Enumerable.Range(0, Unknowns - 1)];
        while (left.Count > 0)
        {
            int next = left.Any(i => i < branches)
                ? left.Where(i => i < branches).MinBy(i => neighbours[i].Count)
                : left.MinBy(i => neighbours[i].Count);
            left.Remove(next);
            Eliminate(next);
        }

        return [.. steps.Select(Resolve)];
    }

    public int Slot(int i, int j)
    {
        (int, int) key = i <= j ? (i, j) : (j, i);
        if (!slots.TryGetValue(key, out int slot))
        {
            slots[key] = slot = slots.Count;
        }

        return slot;
    }

    private void Touch(int i, int j)
    {
        Slot(i, j);
        neighbours[i].Add(j);
        neighbours[j].Add(i);
    }

    private void Eliminate(int k)
    {
        int[] others = [.. neighbours[k]];
        steps.Add(new Step(Work.Invert, -1, Slot(k, k), 0));
        for (int a = 0; a < others.Length; a++)
        {
            int i = others[a];
            bool real = constants.TryGetValue(Slot(i, k), out double entry);
            bool needed =
                !real
                || Enumerable.Range(a, others.Length - a).Any(b => !constants.ContainsKey(Slot(k, others[b])))
                || (driven[k] && !constants.ContainsKey(-3 - k));
            if (needed)
            {
                steps.Add(real ? new Step(Work.Scale, -2, -1, 0, entry) : new Step(Work.Multiply, -2, -1, Slot(i, k)));
            }

            for (int b = a; b < others.Length; b++)
            {
                if (i != others[b])
                {
                    Touch(i, others[b]);
                }

                Reduce(Slot(i, others[b]), Slot(k, others[b]), real ? entry : null);
            }

            if (driven[k])
            {
                driven[i] = true;
                Reduce(-3 - i, -3 - k, real ? entry : null);
            }

            neighbours[i].Remove(k);
        }
    }

    /// <summary>Target −= (pivot's reciprocal · this row's entry) · source, in the cheapest form.</summary>
    private void Reduce(int target, int source, double? entry)
    {
        constants.Remove(target);
        if (!constants.TryGetValue(source, out double value))
        {
            steps.Add(new Step(Work.Subtract, target, -2, source));
            return;
        }

        steps.Add(entry is { } both ? new Step(Work.Add, target, -1, 0, -value * both) : new Step(Work.Add, target, -2, 0, -value));
    }

    /// <summary>Places beyond the entries are known only once all entries are.</summary>
    private Step Resolve(Step step) => step with { Target = Place(step.Target), A = Place(step.A), B = Place(step.B) };

    private int Place(int mark) =>
        mark switch
        {
            >= 0 => mark,
            -1 => Reciprocal,
            -2 => Factor,
            _ => Drive(-3 - mark),
        };
}
