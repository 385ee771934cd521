namespace Coilwright.Physics.BoundaryElements;

/// <summary>Angles to integrate along arcs, with the grading that each pair of pieces needs; computed once per count.</summary>
internal sealed class ArcNodes
{
    private static readonly ArcNodes[] Made = [.. Enumerable.Range(1, 16).Select(half => new ArcNodes(2 * half))];

    private ArcNodes(int count)
    {
        GaussRule rule = GaussRule.WithNodes(count);
        Toward = Angles(rule, t => Math.PI / 2 * t * t * t, t => 1.5 * Math.PI * t * t);
        Difference = Angles(rule, t => Math.PI * t * t * t * t, t => 4 * Math.PI * t * t * t);
        Plain = Angles(rule, t => Math.PI * (t - 0.5), _ => Math.PI);
        Ends = Angles(rule, t => Math.PI / 2 * Math.Sin(Math.PI * (t - 0.5)), t => Math.PI * Math.PI / 2 * Math.Cos(Math.PI * (t - 0.5)));
        Quarter = Angles(rule, t => Math.PI / 2 * t, _ => Math.PI / 2);
        QuarterEnds = Angles(rule, t => Math.PI / 2 * t * t * (3 - 2 * t), t => 3 * Math.PI * t * (1 - t));
    }

    /// <summary>0…π/2, dense toward 0 (cubic).</summary>
    public ArcRule Toward { get; }

    /// <summary>0…π, dense toward 0 (fourth power): difference of two angles.</summary>
    public ArcRule Difference { get; }

    /// <summary>−π/2…π/2, plain.</summary>
    public ArcRule Plain { get; }

    /// <summary>−π/2…π/2, dense toward both ends.</summary>
    public ArcRule Ends { get; }

    /// <summary>0…π/2, plain.</summary>
    public ArcRule Quarter { get; }

    /// <summary>0…π/2, dense toward both ends.</summary>
    public ArcRule QuarterEnds { get; }

    /// <summary>Nodes for an even count of 2…32.</summary>
    public static ArcNodes WithNodes(int count) => Made[count / 2 - 1];

    private static ArcRule Angles(GaussRule rule, Func<double, double> angle, Func<double, double> slope)
    {
        int n = rule.At.Length;
        ArcRule made = new(new double[n], new double[n], new double[n], new double[n]);
        for (int i = 0; i < n; i++)
        {
            double at = angle(rule.At[i]);
            (made.Angle[i], made.Sin[i], made.Cos[i]) = (at, Math.Sin(at), Math.Cos(at));
            made.Weight[i] = rule.Weight[i] * slope(rule.At[i]);
        }

        return made;
    }
}

/// <summary>Angles, their sine and cosine, and the weights of an integral over the angle.</summary>
internal sealed record ArcRule(double[] Angle, double[] Sin, double[] Cos, double[] Weight);
