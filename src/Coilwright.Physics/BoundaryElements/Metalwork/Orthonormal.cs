namespace Coilwright.Physics.BoundaryElements.Metalwork;

/// <summary>Directions at right angles to each other, of length 1.</summary>
internal static class Orthonormal
{
    /// <summary>Adds what a vector has beyond a basis, unless that is less than a share of its length.</summary>
    public static void Add(double[] vector, List<double[]> basis, double least)
    {
        double before = Math.Sqrt(Rows.Dot(vector, vector));
        for (int pass = 0; pass < 2; pass++)
        {
            foreach (double[] direction in basis)
            {
                Rows.Subtract(vector, direction, Rows.Dot(vector, direction));
            }
        }

        double left = Math.Sqrt(Rows.Dot(vector, vector));
        if (left > least * before && before > 0)
        {
            basis.Add([.. vector.Select(value => value / left)]);
        }
    }
}
