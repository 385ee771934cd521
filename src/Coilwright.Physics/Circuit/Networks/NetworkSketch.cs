namespace Coilwright.Physics.Circuit.Networks;

/// <summary>A network as it is soldered: nodes and parts, before anything is computed. Node 0 is ground.</summary>
internal sealed class NetworkSketch
{
    public const int Ground = 0;

    private readonly List<int> joinedTo = [Ground];
    private readonly List<string> names = ["0"];

    public List<PlainPart> Plain { get; } = [];

    public List<BranchPart> Branches { get; } = [];

    public List<CouplingPart> Couplings { get; } = [];

    public int NodeCount => joinedTo.Count;

    public int Node(string name)
    {
        names.Add(name);
        joinedTo.Add(joinedTo.Count);
        return joinedTo.Count - 1;
    }

    /// <summary>The node that stands for all that were joined with this one: the lowest of them.</summary>
    public int Root(int node)
    {
        while (joinedTo[node] != node)
        {
            node = joinedTo[node];
        }

        return node;
    }

    public string NameOf(int node) => names[Root(node)];

    /// <summary>A wire between two nodes.</summary>
    public void Join(int a, int b)
    {
        (int low, int high) = (Math.Min(Root(a), Root(b)), Math.Max(Root(a), Root(b)));
        joinedTo[high] = low;
    }

    /// <summary>A resistor; none at all for null, a wire at 0 Ω.</summary>
    public void Resistor(string name, int a, int b, double? ohm)
    {
        if (ohm is not { } value)
        {
            return;
        }

        if (Require.InRange(value, 0, 1e15) > 0)
        {
            Plain.Add(new PlainPart(name, a, b, value, 0));
        }
        else
        {
            Join(a, b);
        }
    }

    public void Capacitor(string name, int a, int b, double farad)
    {
        if (Require.InRange(farad, 0, 1e-3) > 0)
        {
            Plain.Add(new PlainPart(name, a, b, 0, farad));
        }
    }

    /// <summary>A resistor and a capacitor behind each other; open without the capacitor.</summary>
    public void SeriesPair(string name, int a, int b, double ohm, double farad)
    {
        if (Require.InRange(farad, 0, 1e-3) > 0)
        {
            Plain.Add(new PlainPart(name, a, b, Require.InRange(ohm, 0, 1e9), farad));
        }
    }

    public int Branch(string name, int a, int b, ISeriesBranch source, double share, double level)
    {
        if (source is LumpedPickup lumped)
        {
            Require.InRange(lumped.ResistanceOhm, 1e-6, 1e9);
            Require.InRange(lumped.InductanceH, 0, 1e5);
        }

        Branches.Add(new BranchPart(name, a, b, source, Require.InRange(share, 1e-6, 1), Require.InRange(level, -1e3, 1e3)));
        return Branches.Count - 1;
    }
}
