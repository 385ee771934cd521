using System.Globalization;
using System.Text;

namespace Coilwright.Physics.Circuit.Networks;

/// <summary>
/// Writes a whole circuit in the open SPICE syntax. Node <c>out</c> is the output, 0 ground; every source is the voltage that the string
/// induces in one coil.
/// </summary>
/// <remarks>Only lumped coils can be written part by part; a branch that is a table must be fitted first.</remarks>
public static class CircuitNetlist
{
    /// <summary>The whole file: parts, one AC sweep evenly spaced in log frequency, the output's gain in dB and phase.</summary>
    /// <param name="circuit">The circuit.</param>
    /// <param name="fromHz">First frequency, Hz, 1 mHz…1 GHz.</param>
    /// <param name="toHz">Last frequency, Hz, above the first, at most 1 GHz.</param>
    /// <param name="points">
    /// Number of points wanted, 2…100,000,000; SPICE counts them per decade, so the file asks for the next whole number.
    /// </param>
    /// <param name="notes">Lines of comment at the head of the file; null for none.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    /// <exception cref="ArgumentException">A coil's branch is a table.</exception>
    public static string Write(GuitarCircuit circuit, double fromHz, double toHz, int points, IReadOnlyList<string>? notes = null)
    {
        Require.InRange(fromHz, 1e-3, 1e9);
        Require.InRange(toHz, Math.BitIncrement(fromHz), 1e9);
        int perDecade = Math.Max(1, (int)Math.Ceiling((Require.InRange(points, 2, 1e8) - 1) / Math.Log10(toHz / fromHz) - 1e-9));
        StringBuilder text = new();
        text.Append("* Pickups, controls and load, SI units; each source is the voltage that the string induces in one coil\n");
        foreach (string note in notes ?? [])
        {
            text.Append("* ").Append(note.ReplaceLineEndings(" ")).Append('\n');
        }

        text.Append(Parts(circuit));
        text.Append(CultureInfo.InvariantCulture, $".ac dec {perDecade} {fromHz} {toHz}\n.print ac vdb(out) vp(out)\n.end\n");
        return text.ToString();
    }

    /// <summary>The parts alone, one a line.</summary>
    /// <param name="circuit">The circuit.</param>
    /// <exception cref="ArgumentException">A coil's branch is a table.</exception>
    public static string Parts(GuitarCircuit circuit)
    {
        CircuitSketch drawn = CircuitSketch.FromCircuit(circuit);
        StringBuilder text = new();
        string heard = circuit.Load.Buffer is null ? "out" : "bufferin";
        Draw(text, drawn.Sketch, drawn.Output, heard);
        if (circuit.Load.Buffer is { } buffer)
        {
            NetworkSketch behind = new();
            int output = behind.Node("out");
            CircuitSketch.CableAndInput(behind, output, circuit.Load);
            text.Append(
                CultureInfo.InvariantCulture,
                $"Ebuffer bufferout 0 {heard} 0 {buffer.Gain:R}\nRbufferout bufferout out {buffer.OutputOhm:R}\n"
            );
            Draw(text, behind, output, "out");
        }

        return text.ToString();
    }

    private static void Draw(StringBuilder text, NetworkSketch sketch, int output, string heard)
    {
        string Name(int node)
        {
            if (sketch.Root(node) == NetworkSketch.Ground)
            {
                return "0";
            }

            return sketch.Root(node) == sketch.Root(output) ? heard : sketch.NameOf(node);
        }

        foreach (PlainPart part in sketch.Plain.Where(part => sketch.Root(part.A) != sketch.Root(part.B)))
        {
            string a = Name(part.A),
                b = Name(part.B);
            bool inSeries = part is { Ohm: > 0, F: > 0 };
            string middle = part.Name + "mid",
                afterR = inSeries ? middle : b,
                beforeC = inSeries ? middle : a;
            text.Append(part.Ohm > 0 ? FormattableString.Invariant($"R{part.Name} {a} {afterR} {part.Ohm:R}\n") : "");
            text.Append(part.F > 0 ? FormattableString.Invariant($"C{part.Name} {beforeC} {b} {part.F:R}\n") : "");
        }

        foreach (BranchPart branch in sketch.Branches)
        {
            Branch(text, branch, Name(branch.A), Name(branch.B));
        }

        foreach (CouplingPart coupling in sketch.Couplings)
        {
            Couple(text, sketch.Branches[coupling.First], sketch.Branches[coupling.Second], coupling.InductanceH);
        }
    }

    /// <summary>From A: the induced voltage, R, L, and the eddy branches.</summary>
    private static void Branch(StringBuilder text, BranchPart branch, string a, string b)
    {
        LumpedPickup lumped = Lumped(branch);
        double squared = branch.Share * branch.Share;
        string name = branch.Name,
            next = name + "s";

        // The source lifts the branch's far end, so its plus lies on the far side.
        text.Append(CultureInfo.InvariantCulture, $"V{name} {next} {a} DC 0 AC {branch.Level:R}\n");
        List<string> lines = [FormattableString.Invariant($"R{name} {{0}} {{1}} {lumped.ResistanceOhm * branch.Share:R}")];
        if (lumped.InductanceH > 0)
        {
            lines.Add(FormattableString.Invariant($"L{name} {{0}} {{1}} {lumped.InductanceH * squared:R}"));
        }

        for (int i = 0; i < lumped.Eddy.Count; i++)
        {
            if (lumped.Eddy[i] is { InductanceH: > 0, ResistanceOhm: > 0 } eddy)
            {
                // The two parts of a tapped coil share this branch: the resistor stands across the first alone, the second sees it through
                // the coupling.
                string across = name.EndsWith("rest", StringComparison.Ordinal)
                    ? ""
                    : FormattableString.Invariant($"\nR{name}e{i + 1} {{0}} {{1}} {eddy.ResistanceOhm * squared:R}");
                lines.Add(FormattableString.Invariant($"L{name}e{i + 1} {{0}} {{1}} {eddy.InductanceH * squared:R}{across}"));
            }
        }

        for (int i = 0; i < lines.Count; i++)
        {
            string to = i == lines.Count - 1 ? b : FormattableString.Invariant($"{name}{i + 1}");
            text.Append(lines[i].Replace("{0}", next, StringComparison.Ordinal).Replace("{1}", to, StringComparison.Ordinal)).Append('\n');
            next = to;
        }
    }

    private static void Couple(StringBuilder text, BranchPart first, BranchPart second, double? mutualH)
    {
        LumpedPickup one = Lumped(first),
            two = Lumped(second);
        if (mutualH is { } henry)
        {
            double k = henry / Math.Sqrt(one.InductanceH * two.InductanceH) / (first.Share * second.Share);
            text.Append(
                Math.Abs(k) > 0 ? FormattableString.Invariant($"K{first.Name}{second.Name} L{first.Name} L{second.Name} {k:R}\n") : ""
            );
            return;
        }

        text.Append(one.InductanceH > 0 ? FormattableString.Invariant($"K{first.Name}{second.Name} L{first.Name} L{second.Name} 1\n") : "");
        for (int i = 0; i < one.Eddy.Count; i++)
        {
            if (one.Eddy[i] is { InductanceH: > 0, ResistanceOhm: > 0 })
            {
                text.Append(
                    CultureInfo.InvariantCulture,
                    $"K{first.Name}{second.Name}e{i + 1} L{first.Name}e{i + 1} L{second.Name}e{i + 1} 1\n"
                );
            }
        }
    }

    private static LumpedPickup Lumped(in BranchPart branch) =>
        branch.Source as LumpedPickup
        ?? throw new ArgumentException("Only a lumped coil can be written as parts; fit the table first.", nameof(branch));
}
