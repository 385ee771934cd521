namespace Coilwright.Physics.Circuit.Networks;

/// <summary>Solders a <see cref="GuitarCircuit"/>: turns it into nodes and parts.</summary>
/// <remarks>With a buffer there are two networks: the one up to the buffer's input, and the one from its output on.</remarks>
internal sealed class CircuitSketch
{
    private readonly NetworkSketch sketch = new();

    private CircuitSketch(GuitarCircuit circuit)
    {
        Output = sketch.Node("out");
        int bus = sketch.Node("bus");
        Pickups(circuit, bus);
        Tone("tone", bus, NetworkSketch.Ground, circuit.Load.Tone);
        Volume("volume", bus, Output, NetworkSketch.Ground, circuit.Load.Volume);
        if (circuit.Load.Buffer is { } buffer)
        {
            sketch.Resistor("bufferin", Output, NetworkSketch.Ground, Require.InRange(buffer.InputOhm, 1, 1e15));
            sketch.Capacitor("bufferin", Output, NetworkSketch.Ground, buffer.InputF);
        }
        else
        {
            CableAndInput(sketch, Output, circuit.Load);
        }
    }

    public NetworkSketch Sketch => sketch;

    /// <summary>The node at which the first network is heard: the output, or the buffer's input.</summary>
    public int Output { get; }

    public static CircuitSketch FromCircuit(GuitarCircuit circuit) => new(circuit);

    /// <summary>Cable and input alone, as they hang behind a buffer.</summary>
    public static void CableAndInput(NetworkSketch sketch, int node, LoadCircuit load)
    {
        sketch.Capacitor("cable", node, NetworkSketch.Ground, load.CableCapacitanceF);
        sketch.Resistor("input", node, NetworkSketch.Ground, load.InputResistanceOhm);
        sketch.Capacitor("input", node, NetworkSketch.Ground, load.InputCapacitanceF);
    }

    private void Pickups(GuitarCircuit circuit, int bus)
    {
        int low = NetworkSketch.Ground;
        for (int i = 0; i < circuit.Selected.Count; i++)
        {
            int number = (int)Require.InRange(circuit.Selected[i], 0, circuit.Pickups.Count - 1);
            bool last = circuit.Joined == Joining.Parallel || i == circuit.Selected.Count - 1;
            int high = last ? bus : sketch.Node(FormattableString.Invariant($"between{i + 1}"));
            Pickup(circuit.Pickups[number], FormattableString.Invariant($"{number + 1}"), low, high);
            low = circuit.Joined == Joining.Parallel ? NetworkSketch.Ground : high;
        }
    }

    private void Pickup(CircuitPickup pickup, string tag, int low, int high)
    {
        int terminal = sketch.Node("p" + tag);
        (int start, int finish) = pickup.Reversed ? (terminal, low) : (low, terminal);
        List<(int Branch, double Share)>[] branches = new List<(int, double)>[pickup.Coils.Count];
        int at = start;
        int last = LastOf(pickup);
        for (int i = 0; i < pickup.Coils.Count; i++)
        {
            CircuitCoil coil = pickup.Coils[i];
            string name = FormattableString.Invariant($"{tag}{(char)('a' + i)}");
            if (pickup.OnlyCoil is { } only && only != i)
            {
                // Hangs open on one end: its branch carries current into its own capacitance, and couples.
                branches[i] = Coil(coil, name, start, sketch.Node("open" + name));
                continue;
            }

            bool ends = pickup.Joined == Joining.Parallel || i == last;
            int next = ends ? finish : sketch.Node("join" + name);
            branches[i] = Coil(coil, name, at, next);
            at = pickup.Joined == Joining.Parallel ? start : next;
        }

        Couple(pickup, branches);
        Tone("tone" + tag, terminal, low, pickup.Tone);
        Volume("vol" + tag, terminal, high, low, pickup.Volume);
    }

    private static int LastOf(CircuitPickup pickup) => pickup.OnlyCoil ?? pickup.Coils.Count - 1;

    /// <summary>One coil between two nodes; a tapped one as two parts, the rest hanging open.</summary>
    private List<(int Branch, double Share)> Coil(CircuitCoil coil, string name, int from, int to)
    {
        double share = coil.TapShare is { } tap ? Require.InRange(tap, 1e-3, 1) : 1;
        bool tapped = share < 1;
        int end = tapped ? sketch.Node("rest" + name) : to;
        List<(int, double)> branches = [];
        if (coil.Reversed && !tapped)
        {
            (from, to) = (to, from);
            end = to;
        }

        // Reversed and tapped: the tap then lies on the low side, and the start on the high one.
        (int a, int b) = coil.Reversed && tapped ? (to, from) : (from, to);
        branches.Add((sketch.Branch(name, a, b, coil.Branch, share, coil.Level * share), share));
        if (tapped)
        {
            branches.Add((sketch.Branch(name + "rest", b, end, coil.Branch, 1 - share, coil.Level * (1 - share)), 1 - share));
            sketch.Couplings.Add(new CouplingPart(branches[0].Item1, branches[1].Item1, null));
        }

        sketch.Capacitor("coil" + name, a, end, coil.CapacitanceF);
        sketch.Resistor("loss" + name, a, end, coil.ParallelLossOhm is { } loss ? Require.InRange(loss, 1e-3, 1e15) : null);
        return branches;
    }

    private void Couple(CircuitPickup pickup, List<(int Branch, double Share)>[] branches)
    {
        foreach (MutualInductance mutual in pickup.Mutual)
        {
            Require.InRange(mutual.InductanceH, -1e5, 1e5);
            foreach ((int first, double firstShare) in branches[mutual.First])
            {
                foreach ((int second, double secondShare) in branches[mutual.Second])
                {
                    sketch.Couplings.Add(new CouplingPart(first, second, mutual.InductanceH * firstShare * secondShare));
                }
            }
        }
    }

    private void Tone(string name, int node, int low, ToneControl? tone)
    {
        if (tone is { } control)
        {
            sketch.SeriesPair(
                name,
                node,
                low,
                Require.InRange(control.ResistanceOhm, 0, 1e9) * Require.InRange(control.Setting, 0, 1),
                control.CapacitorF
            );
        }
    }

    private void Volume(string name, int from, int to, int low, VolumeControl? volume)
    {
        if (volume is not { } control)
        {
            sketch.Join(from, to);
            return;
        }

        double track = Require.InRange(control.ResistanceOhm, 1e-3, 1e9),
            below = track * Require.InRange(control.Setting, 0, 1);
        (int top, int wiper) = control.FromWiper ? (to, from) : (from, to);
        sketch.Resistor(name + "above", top, wiper, track - below);
        sketch.Resistor(name + "below", wiper, low, below);
        if (control.Retainer is { } keep)
        {
            if (keep.InSeries && keep is { ResistanceOhm: { } ohm, CapacitanceF: { } farad })
            {
                sketch.SeriesPair(name + "keep", top, wiper, ohm, farad);
            }
            else
            {
                sketch.Resistor(name + "keep", top, wiper, keep.ResistanceOhm);
                sketch.Capacitor(name + "keep", top, wiper, keep.CapacitanceF ?? 0);
            }
        }
    }
}
