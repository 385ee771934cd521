using System.Numerics;
using System.Runtime.InteropServices;

namespace Coilwright.Physics.Circuit.Networks;

/// <summary>
/// One network ready to be solved at many frequencies, several at a time in the processor's vector registers. Not for two threads at once.
/// </summary>
/// <remarks>
/// Source: Kirchhoff's laws. Branch row: u(a) − u(b) − Σ Z·i = −E; node row: Σ currents leaving = 0. Re(Z seen at the output) gives the
/// thermal noise [Nyquist].
/// Checked against a circuit simulator on random networks of every kind of part, against the ladder's closed form, and by scaling,
/// reciprocity and limits.
/// </remarks>
internal sealed class NetworkCurve : IGainCurve
{
    /// <summary>Frequencies that go through the steps together: their whole matrix then stays in the nearest cache.</summary>
    private const int Block = 64;

    private readonly SolvePlan plan;
    private readonly SolvePlan.Step[] steps;
    private readonly NetworkFill fill;
    private readonly Vector<double>[] places;
    private readonly int pivot;

    public NetworkCurve(NetworkSketch sketch, int output)
    {
        IsSilent = sketch.Root(output) == NetworkSketch.Ground;
        fill = new NetworkFill(sketch, output);
        plan = fill.Plan;
        steps = fill.Steps;
        pivot = plan.Slot(plan.Unknowns - 1, plan.Unknowns - 1);
        places = new Vector<double>[plan.PlaceCount * 2 * Width];
    }

    /// <summary>True when the output is shorted to ground.</summary>
    public bool IsSilent { get; }

    private static int Width => Block / Vector<double>.Count;

    /// <summary>Most frequencies that <see cref="SolveBlock"/> takes at once.</summary>
    public static int MostAtOnce => Block;

    /// <summary>Output voltage for 1 V induced, and the impedance seen between the output's wires, at each frequency.</summary>
    public void Solve(ReadOnlySpan<double> frequenciesHz, Span<double> re, Span<double> im, Span<double> ohmRe, Span<double> ohmIm)
    {
        for (int from = 0; from < frequenciesHz.Length; from += Block)
        {
            int count = Math.Min(Block, frequenciesHz.Length - from);
            SolveBlock(frequenciesHz.Slice(from, count));
            Copy(GainRe, re.Slice(from, count));
            Copy(GainIm, im.Slice(from, count));
            Copy(OhmRe, ohmRe.Slice(from, count));
            Copy(OhmIm, ohmIm.Slice(from, count));
        }

        static void Copy(Span<Vector<double>> from, Span<double> to) =>
            MemoryMarshal.Cast<Vector<double>, double>(from)[..to.Length].CopyTo(to);
    }

    public Span<Vector<double>> GainRe => Part(plan.Factor, 0, Width);

    public Span<Vector<double>> GainIm => Part(plan.Factor, 1, Width);

    public Span<Vector<double>> OhmRe => Part(plan.Reciprocal, 0, Width);

    public Span<Vector<double>> OhmIm => Part(plan.Reciprocal, 1, Width);

    /// <inheritdoc/>
    public double Attenuation(double frequencyHz)
    {
        SolveBlock([frequencyHz]);
        double re = GainRe[0][0],
            im = GainIm[0][0];
        return 1 / Math.Max(re * re + im * im, 1e-200);
    }

    /// <summary>
    /// Solves up to <see cref="MostAtOnce"/> frequencies; the results stand in <see cref="GainRe"/> and its like until the next call.
    /// </summary>
    public void SolveBlock(ReadOnlySpan<double> frequenciesHz)
    {
        Span<double> padded = stackalloc double[Block];
        int vectors = (frequenciesHz.Length + Vector<double>.Count - 1) / Vector<double>.Count;
        frequenciesHz.CopyTo(padded);
        padded[frequenciesHz.Length..(vectors * Vector<double>.Count)].Fill(padded[frequenciesHz.Length - 1]);
        fill.Write(places, Width, padded, vectors);
        Run(vectors);
        Invert(plan.Reciprocal, pivot, vectors);
        Multiply(plan.Factor, plan.Reciprocal, plan.Drive(plan.Unknowns - 1), vectors);
    }

    private void Run(int vectors)
    {
        foreach (SolvePlan.Step step in steps)
        {
            switch (step.Work)
            {
                case SolvePlan.Work.Invert:
                    Invert(step.Target, step.A, vectors);
                    break;
                case SolvePlan.Work.Multiply:
                    Multiply(step.Target, step.A, step.B, vectors);
                    break;
                case SolvePlan.Work.Subtract:
                    Subtract(step.Target, step.A, step.B, vectors);
                    break;
                case SolvePlan.Work.Scale:
                    Part(step.Target, 0, vectors).Clear();
                    Part(step.Target, 1, vectors).Clear();
                    Add(step.Target, step.A, step.Factor, vectors);
                    break;
                default:
                    Add(step.Target, step.A, step.Factor, vectors);
                    break;
            }
        }
    }

    private Span<Vector<double>> Part(int place, int part, int vectors) => places.AsSpan((2 * place + part) * Width, vectors);

    private void Invert(int target, int a, int vectors)
    {
        Span<Vector<double>> tr = Part(target, 0, vectors),
            ti = Part(target, 1, vectors),
            ar = Part(a, 0, vectors),
            ai = Part(a, 1, vectors);
        for (int v = 0; v < tr.Length; v++)
        {
            Vector<double> r = ar[v],
                i = ai[v],
                scale = Vector<double>.One / (r * r + i * i);
            tr[v] = r * scale;
            ti[v] = -i * scale;
        }
    }

    private void Multiply(int target, int a, int b, int vectors)
    {
        Span<Vector<double>> tr = Part(target, 0, vectors),
            ti = Part(target, 1, vectors),
            ar = Part(a, 0, vectors),
            ai = Part(a, 1, vectors),
            br = Part(b, 0, vectors),
            bi = Part(b, 1, vectors);
        for (int v = 0; v < tr.Length; v++)
        {
            Vector<double> p = ar[v],
                q = ai[v],
                r = br[v],
                s = bi[v];
            tr[v] = p * r - q * s;
            ti[v] = p * s + q * r;
        }
    }

    private void Subtract(int target, int a, int b, int vectors)
    {
        Span<Vector<double>> tr = Part(target, 0, vectors),
            ti = Part(target, 1, vectors),
            ar = Part(a, 0, vectors),
            ai = Part(a, 1, vectors),
            br = Part(b, 0, vectors),
            bi = Part(b, 1, vectors);
        for (int v = 0; v < tr.Length; v++)
        {
            Vector<double> p = ar[v],
                q = ai[v],
                r = br[v],
                s = bi[v];
            tr[v] -= p * r - q * s;
            ti[v] -= p * s + q * r;
        }
    }

    private void Add(int target, int a, double factor, int vectors)
    {
        Span<Vector<double>> tr = Part(target, 0, vectors),
            ti = Part(target, 1, vectors),
            ar = Part(a, 0, vectors),
            ai = Part(a, 1, vectors);
        for (int v = 0; v < tr.Length; v++)
        {
            tr[v] += ar[v] * factor;
            ti[v] += ai[v] * factor;
        }
    }
}
