namespace Coilwright.Physics.Fields;

/// <summary>Where each element of each part stands among the unknowns; the first of a mirror pair leads, the other follows it, a few by the opposite sign.</summary>
internal sealed class SystemPlaces
{
    public SystemPlaces(IReadOnlyList<MagneticBody> bodies, double? mirrorX)
    {
        (Unknown, Leads, Sign, Group) = (new int[bodies.Count][], new bool[bodies.Count][], new int[bodies.Count][], new int[bodies.Count]);
        for (int b = 0; b < bodies.Count; b++)
        {
            Group[b] = mirrorX is { } x0 ? Enumerable.Range(0, b + 1).First(o => o == b || bodies[b].Mirrors(bodies[o], x0)) : b;
            (Unknown[b], Leads[b], Sign[b]) = (new int[bodies[b].Count], new bool[bodies[b].Count], new int[bodies[b].Count]);
            Number(bodies[b], b, Group[b] == b && mirrorX is { } x1 && bodies[b].Mirrors(bodies[b], x1));
        }
    }

    public int Count { get; private set; }

    /// <summary>By part and element: its unknown, or −1 if symmetry lets it vanish.</summary>
    public int[][] Unknown { get; }
    public bool[][] Leads { get; }

    /// <summary>1 or −1 by part and element.</summary>
    public int[][] Sign { get; }

    /// <summary>The part that each part is the mirror image of, or itself.</summary>
    public int[] Group { get; }

    /// <summary>True if any element of a part leads.</summary>
    public bool IsLed(int body) => Leads[body].Contains(true);

    private void Number(MagneticBody body, int b, bool folded)
    {
        for (int i = 0; i < body.Count; i++)
        {
            int image = body.Mirror(i);
            if (Group[b] != b)
            {
                (Unknown[b][i], Sign[b][i]) = (Unknown[Group[b]][image], body.MirrorSign(i));
            }
            else if (folded && image <= i)
            {
                bool vanishes = image == i && body.MirrorSign(i) < 0, leads = image == i && !vanishes;
                (Unknown[b][i], Sign[b][i], Leads[b][i]) = (vanishes ? -1 : leads ? Count++ : Unknown[b][image], vanishes ? 0 : 1, leads);
            }
            else
            {
                (Unknown[b][i], Sign[b][i], Leads[b][i]) = (Count++, 1, true);
            }
        }
    }
}
