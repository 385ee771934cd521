using System.Numerics;

namespace Coilwright.Physics.BoundaryElements;

/// <summary>LU solution of small complex systems in place.</summary>
internal static class ComplexLu
{
    /// <summary>
    /// Solves matrix · X = right for several right sides; both arrays are overwritten, the solution stands in <paramref name="right"/>.
    /// </summary>
    public static void Solve(Complex[,] matrix, Complex[,] right)
    {
        int n = matrix.GetLength(0),
            sides = right.GetLength(1);
        for (int k = 0; k < n; k++)
        {
            SwapPivot(matrix, right, k);
            Complex inverse = 1 / matrix[k, k];
            for (int i = k + 1; i < n; i++)
            {
                Complex factor = matrix[i, k] * inverse;
                for (int j = k + 1; j < n; j++)
                {
                    matrix[i, j] -= factor * matrix[k, j];
                }

                for (int j = 0; j < sides; j++)
                {
                    right[i, j] -= factor * right[k, j];
                }
            }
        }

        for (int k = n - 1; k >= 0; k--)
        {
            Complex inverse = 1 / matrix[k, k];
            for (int j = 0; j < sides; j++)
            {
                Complex sum = right[k, j];
                for (int m = k + 1; m < n; m++)
                {
                    sum -= matrix[k, m] * right[m, j];
                }

                right[k, j] = sum * inverse;
            }
        }
    }

    private static void SwapPivot(Complex[,] matrix, Complex[,] right, int k)
    {
        int n = matrix.GetLength(0),
            pivot = k;
        for (int i = k + 1; i < n; i++)
        {
            pivot = Size(matrix[i, k]) > Size(matrix[pivot, k]) ? i : pivot;
        }

        for (int j = 0; pivot != k && j < n; j++)
        {
            (matrix[k, j], matrix[pivot, j]) = (matrix[pivot, j], matrix[k, j]);
        }

        for (int j = 0; pivot != k && j < right.GetLength(1); j++)
        {
            (right[k, j], right[pivot, j]) = (right[pivot, j], right[k, j]);
        }
    }

    private static double Size(Complex value) => Math.Abs(value.Real) + Math.Abs(value.Imaginary);
}
