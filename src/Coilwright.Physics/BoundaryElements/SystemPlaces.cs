namespace Coilwright.Physics.BoundaryElements;

/// <summary>
/// Where each element of each part stands among the unknowns; the first of a mirror pair leads, the other follows it, a few by the opposite
/// sign;
/// elements tied together share an unknown.
/// </summary>
internal sealed class SystemPlaces
{
    public SystemPlaces(IReadOnlyList<MagneticBody> bodies, double? mirrorX)
    {
        (Unknown, Share, Sign, Group) = (
            new int[bodies.Count][],
            new double[bodies.Count][],
            new int[bodies.Count][],
            new int[bodies.Count]
        );
        for (int b = 0; b < bodies.Count; b++)
        {
            Group[b] = mirrorX is { } x0 ? Enumerable.Range(0, b + 1).First(o => o == b || bodies[b].Mirrors(bodies[o], x0)) : b;
            (Unknown[b], Share[b], Sign[b]) = (new int[bodies[b].Count], new double[bodies[b].Count], new int[bodies[b].Count]);
            Number(bodies[b], b, Group[b] == b && mirrorX is { } x1 && bodies[b].Mirrors(bodies[b], x1));
        }
    }

    public int Count { get; private set; }

    /// <summary>By part and element: its unknown, or −1 if symmetry lets it vanish.</summary>
    public int[][] Unknown { get; }

    /// <summary>By part and element: its share of its unknown's equation, 0 for one that follows.</summary>
    public double[][] Share { get; }

    /// <summary>1 or −1 by part and element.</summary>
    public int[][] Sign { get; }

    /// <summary>The part that each part is the mirror image of, or itself.</summary>
    public int[] Group { get; }

    /// <summary>True if a part stands for itself, not for the mirror image of another.</summary>
    public bool IsLed(int body) => Group[body] == body;

    private void Number(MagneticBody body, int b, bool folded)
    {
        for (int i = 0; i < body.Count; i++)
        {
            int image = body.Mirror(i),
                tied = body.Tied(i);
            if (Group[b] != b)
            {
                (Unknown[b][i], Sign[b][i]) = (Unknown[Group[b]][image], body.MirrorSign(i));
            }
            else if (folded && image <= i && (image < i || body.MirrorSign(i) < 0))
            {
                (Unknown[b][i], Sign[b][i]) = image < i ? (Unknown[b][image], 1) : (-1, 0);
            }
            else
            {
                (Unknown[b][i], Sign[b][i]) = (tied < i ? Unknown[b][tied] : Count++, 1);
                Share[b][i] =
                    body.Weight[i]
                    / Enumerable.Range(tied, i - tied + 2).Where(k => k < body.Count && body.Tied(k) == tied).Sum(k => body.Weight[k]);
            }
        }
    }
}
