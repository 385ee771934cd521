namespace Coilwright.Physics.Winding;

/// <summary>Surface over simulated sections: packing factor, and capacitance of touching and of near pairs.</summary>
/// <remarks>
/// Linear between the nodes in pitch, wander and the logarithm of the layers; the nodes are remade by <see cref="LaySurfaceRecipe"/>.
/// </remarks>
public static partial class LaySurface
{
    /// <summary>
    /// Half of the 95 % interval of the packing factor: scatter over seeds, pitches that fit the window or not, and the build's definition.
    /// </summary>
    public const double PackingHalfWidth = 0.04;

    /// <summary>
    /// Values at a pitch and wander in diameters and a number of layers N·d/height; outside the nodes the nearest edge holds.
    /// </summary>
    /// <param name="pitch">Travel per turn over the overall diameter, above zero.</param>
    /// <param name="jitter">Wander over the overall diameter, one standard deviation, zero or more.</param>
    /// <param name="layers">Number of layers, above zero.</param>
    public static LayNode Interpolate(double pitch, double jitter, double layers)
    {
        (int p, double pw) = Bracket(LaySurfaceRecipe.PitchNodes, pitch, logarithmic: false);
        (int j, double jw) = Bracket(LaySurfaceRecipe.JitterNodes, jitter, logarithmic: false);
        (int l, double lw) = Bracket(LaySurfaceRecipe.LayerNodes, layers, logarithmic: true);
        double packing = 0;
        double touching = 0;
        double near = 0;
        for (int corner = 0; corner < 8; corner++)
        {
            int dp = corner & 1;
            int dj = (corner >> 1) & 1;
            int dl = corner >> 2;
            double weight = (dp == 1 ? pw : 1 - pw) * (dj == 1 ? jw : 1 - jw) * (dl == 1 ? lw : 1 - lw);
            int node = Index(p + dp, j + dj, l + dl);
            packing += weight * Packing[node];
            touching += weight * Touching[node];
            near += weight * Near[node];
        }

        return new(packing, touching, near);
    }

    /// <summary>The stored values of one node.</summary>
    /// <param name="pitch">Place in <see cref="LaySurfaceRecipe.PitchNodes"/>.</param>
    /// <param name="jitter">Place in <see cref="LaySurfaceRecipe.JitterNodes"/>.</param>
    /// <param name="layers">Place in <see cref="LaySurfaceRecipe.LayerNodes"/>.</param>
    public static LayNode Node(int pitch, int jitter, int layers)
    {
        int node = Index(pitch, jitter, layers);
        return new(Packing[node], Touching[node], Near[node]);
    }

    private static int Index(int pitch, int jitter, int layers) =>
        (pitch * LaySurfaceRecipe.JitterNodes.Count + jitter) * LaySurfaceRecipe.LayerNodes.Count + layers;

    private static (int Low, double Weight) Bracket(IReadOnlyList<double> nodes, double value, bool logarithmic)
    {
        double held = Math.Clamp(value, nodes[0], nodes[^1]);
        int low = 0;
        while (low < nodes.Count - 2 && held > nodes[low + 1])
        {
            low++;
        }

        double weight = logarithmic
            ? Math.Log(held / nodes[low]) / Math.Log(nodes[low + 1] / nodes[low])
            : (held - nodes[low]) / (nodes[low + 1] - nodes[low]);
        return (low, weight);
    }
}
