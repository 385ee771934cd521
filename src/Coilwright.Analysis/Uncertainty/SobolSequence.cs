using System.Numerics;

namespace Coilwright.Analysis.Uncertainty;

/// <summary>Evenly scattered points of the unit cube: Sobol's sequence, scrambled from a seed.</summary>
/// <remarks>
/// [Sobol], I. M. Sobol (1967): direction numbers by the recurrence of a primitive polynomial over GF(2), one per dimension, found here by
/// trial in order of degree.
/// The free first numbers are odd and drawn from a fixed stream of our own. Scrambled by nested uniform scrambling (A. B. Owen 1995) in
/// hashed form
/// (B. Burley 2020); both from memory, checked by their properties: the first 2^m points of every dimension fall one into each of 2^m equal
/// cells, and
/// the estimate of smooth integrals converges faster than with random points.
/// </remarks>
public sealed class SobolSequence
{
    private const int Bits = 32;
    private readonly uint[][] _directions;
    private readonly uint[] _seeds;

    /// <param name="dimensions">Coordinates of a point, 1…150.</param>
    /// <param name="seed">Any number; the same seed gives the same points.</param>
    public SobolSequence(int dimensions, int seed)
    {
        if (dimensions is < 1 or > 150)
        {
            throw new ArgumentOutOfRangeException(nameof(dimensions), dimensions, "1 to 150 dimensions.");
        }

        _directions = new uint[dimensions][];
        _seeds = new uint[dimensions];
        IEnumerator<(int Degree, uint Polynomial)> polynomials = Primitive().GetEnumerator();
        ulong stream = 0x9E3779B97F4A7C15;
        for (int d = 0; d < dimensions; d++)
        {
            _seeds[d] = Hash((uint)seed * 0x9E3779B9u + (uint)d * 0x85EBCA6Bu + 1);
            if (d == 0)
            {
                _directions[d] = First();
                continue;
            }

            _directions[d] = polynomials.MoveNext()
                ? Directions(polynomials.Current.Degree, polynomials.Current.Polynomial, ref stream)
                : throw new InvalidOperationException("no more primitive polynomials");
        }
    }

    /// <summary>Coordinates of a point, 1 to 150.</summary>
    public int Dimensions => _directions.Length;

    /// <summary>One coordinate of one point, strictly between 0 and 1.</summary>
    /// <param name="index">Number of the point, from 0.</param>
    /// <param name="dimension">Coordinate, from 0.</param>
    public double At(int index, int dimension)
    {
        uint bits = 0;
        uint[] directions = _directions[dimension];
        for (uint rest = (uint)index; rest != 0; rest &= rest - 1)
        {
            bits ^= directions[BitOperations.TrailingZeroCount(rest)];
        }

        return (Scramble(bits, _seeds[dimension]) + 0.5) / 4294967296.0;
    }

    private static uint[] First()
    {
        uint[] directions = new uint[Bits];
        for (int i = 0; i < Bits; i++)
        {
            directions[i] = 1u << (Bits - 1 - i);
        }

        return directions;
    }

    /// <summary>v(i) = a1·v(i−1) ⊕ … ⊕ v(i−s) ⊕ (v(i−s) shifted right by s), with the polynomial's inner coefficients a.</summary>
    private static uint[] Directions(int degree, uint polynomial, ref ulong stream)
    {
        uint[] directions = new uint[Bits];
        for (int i = 0; i < Bits; i++)
        {
            if (i < degree)
            {
                stream = stream * 6364136223846793005 + 1442695040888963407;
                uint odd = ((uint)(stream >> 33) & ((1u << (i + 1)) - 1)) | 1;
                directions[i] = odd << (Bits - 1 - i);
                continue;
            }

            uint value = directions[i - degree] ^ (directions[i - degree] >> degree);
            for (int k = 1; k < degree; k++)
            {
                value ^= (polynomial >> (degree - k) & 1) != 0 ? directions[i - k] : 0;
            }

            directions[i] = value;
        }

        return directions;
    }

    /// <summary>
    /// Primitive polynomials over GF(2) by degree: those whose root runs through all 2^s − 1 elements before it returns to 1.
    /// </summary>
    private static IEnumerable<(int Degree, uint Polynomial)> Primitive()
    {
        yield return (1, 3);
        for (int degree = 2; degree <= 10; degree++)
        {
            for (uint polynomial = (1u << degree) + 1; polynomial < 2u << degree; polynomial += 2)
            {
                if (OrderOfRoot(polynomial, degree) == (1u << degree) - 1)
                {
                    yield return (degree, polynomial);
                }
            }
        }
    }

    private static uint OrderOfRoot(uint polynomial, int degree)
    {
        uint power = 1,
            order = 0;
        do
        {
            power <<= 1;
            power ^= (power >> degree & 1) != 0 ? polynomial : 0;
            order++;
        } while (power != 1 && order < 1u << degree);
        return order;
    }

    /// <summary>Each bit is turned over or not by a hash of the bits above it.</summary>
    private static uint Scramble(uint value, uint seed)
    {
        uint bits = Reverse(value);
        bits ^= bits * 0x3D20ADEA;
        bits += seed;
        bits *= (seed >> 16) | 1;
        bits ^= bits * 0x05526C56;
        bits ^= bits * 0x53A22864;
        return Reverse(bits);
    }

    private static uint Reverse(uint value)
    {
        value = (value >> 1 & 0x55555555) | (value & 0x55555555) << 1;
        value = (value >> 2 & 0x33333333) | (value & 0x33333333) << 2;
        value = (value >> 4 & 0x0F0F0F0F) | (value & 0x0F0F0F0F) << 4;
        return System.Buffers.Binary.BinaryPrimitives.ReverseEndianness(value);
    }

    private static uint Hash(uint value)
    {
        value ^= value >> 16;
        value *= 0x7FEB352D;
        value ^= value >> 15;
        value *= 0x846CA68B;
        return value ^ (value >> 16);
    }
}
