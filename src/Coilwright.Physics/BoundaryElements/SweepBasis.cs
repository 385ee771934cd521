namespace Coilwright.Physics.BoundaryElements;

/// <summary>
/// Orthonormal directions that a sweep is projected on: solves of each winding's field cut to one material, then solves of those, breadth
/// first.
/// </summary>
/// <remarks>The kernel's image of each direction comes with the solve that made it: (Λ − K)x = b gives Kx = Λx − b.</remarks>
internal sealed class SweepBasis(int unknowns, int most)
{
    /// <summary>Right sides solved together.</summary>
    private const int Together = 16;

    private readonly List<double[]> _directions = [],
        _images = [];

    public int Count => _directions.Count;

    public double[] this[int index] => _directions[index];

    /// <summary>The kernel times a direction.</summary>
    public double[] ImageOf(int index) => _images[index];

    /// <param name="drives">Fields to start from.</param>
    /// <param name="factors">Of Λ − K.</param>
    /// <param name="lambda">Λ by material.</param>
    /// <param name="material">Material of each unknown.</param>
    public void Grow(double[][] drives, DenseLu factors, double[] lambda, int[] material)
    {
        for (int next = -drives.Length; next < Count && Count < most; )
        {
            int sources = Math.Clamp(Math.Min(Together, most - Count) / lambda.Length, 1, next < 0 ? -next : Count - next);
            List<double[]> right = [];
            for (int s = 0; s < sources; s++, next++)
            {
                double[] from = next < 0 ? drives[next + drives.Length] : _directions[next];
                right.AddRange(lambda.Select((_, m) => Cut(from, material, m)));
            }

            double[][] solved = [.. right.Select(side => (double[])side.Clone())];
            factors.Solve(solved);
            for (int k = 0; k < solved.Length && Count < most; k++)
            {
                double[] image = right[k];
                for (int i = 0; i < unknowns; i++)
                {
                    image[i] = lambda[material[i]] * solved[k][i] - image[i];
                }

                Orthonormalise(solved[k], image);
            }
        }
    }

    private static double[] Cut(double[] from, int[] material, int kept)
    {
        double[] cut = new double[from.Length];
        for (int i = 0; i < cut.Length; i++)
        {
            cut[i] = material[i] == kept ? from[i] : 0;
        }

        return cut;
    }

    private void Orthonormalise(double[] vector, double[] image)
    {
        double before = Math.Sqrt(Rows.Dot(vector, vector));
        for (int pass = 0; pass < 2; pass++)
        {
            for (int d = 0; d < Count; d++)
            {
                double along = Rows.Dot(vector, _directions[d]);
                Rows.Subtract(vector, _directions[d], along);
                Rows.Subtract(image, _images[d], along);
            }
        }

        double left = Math.Sqrt(Rows.Dot(vector, vector));
        if (left > 1e-7 * before && before > 0)
        {
            for (int i = 0; i < vector.Length; i++)
            {
                vector[i] /= left;
                image[i] /= left;
            }

            _directions.Add(vector);
            _images.Add(image);
        }
    }
}
