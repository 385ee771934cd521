using System.Globalization;
using System.Numerics;

namespace Coilwright.Analysis.Uncertainty;

/// <summary>Evenly scattered points of the unit cube: Sobol's sequence, scrambled from a seed.</summary>
/// <remarks>
/// [Sobol], I. M. Sobol (1967), with the direction numbers of S. Joe and F. Y. Kuo (2008), chosen so that pairs of dimensions are
/// even too. Scrambled by nested uniform scrambling (A. B. Owen 1995) in hashed form (B. Burley 2020); both from memory, checked by
/// their properties: the first 2^m points of every dimension fall one into each of 2^m equal cells, and the estimate of smooth
/// integrals converges faster than with random points.
/// </remarks>
public sealed class SobolSequence
{
    /// <summary>Coordinates that the table of direction numbers has; those beyond are plain random numbers of the same seed.</summary>
    public const int TableDimensions = 150;

    /// <summary>The most coordinates that a point may have.</summary>
    public const int MostDimensions = 5000;

    private const int Bits = 32;

    private static readonly uint[][] s_directions = DirectionNumbers();

    private readonly uint[] _seeds;

    /// <summary>A sequence of points.</summary>
    /// <param name="dimensions">Coordinates of a point, 1…5,000.</param>
    /// <param name="seed">Any number; the same seed gives the same points.</param>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than one coordinate or more than 5,000.</exception>
    public SobolSequence(int dimensions, int seed)
    {
        if (dimensions is < 1 or > MostDimensions)
        {
            throw new ArgumentOutOfRangeException(nameof(dimensions), dimensions, $"1 to {MostDimensions} dimensions.");
        }

        _seeds = [.. Enumerable.Range(0, dimensions).Select(d => Hash((uint)seed * 0x9E3779B9u + (uint)d * 0x85EBCA6Bu + 1))];
    }

    /// <summary>Coordinates of a point, 1 to 5,000.</summary>
    public int Dimensions => _seeds.Length;

    /// <summary>One coordinate of one point, strictly between 0 and 1.</summary>
    /// <param name="index">Number of the point, from 0.</param>
    /// <param name="dimension">Coordinate, from 0.</param>
    public double At(int index, int dimension)
    {
        uint bits =
            dimension < TableDimensions
                ? Scramble(UnscrambledBits(index, dimension), _seeds[dimension])
                : Hash((uint)index * 0x9E3779B9u ^ _seeds[dimension]);
        return (bits + 0.5) / 4294967296.0;
    }

    /// <summary>A coordinate before it is scrambled, as 32 binary places.</summary>
    /// <param name="index">Number of the point, from 0.</param>
    /// <param name="dimension">Coordinate, from 0 to 149.</param>
    public static uint UnscrambledBits(int index, int dimension)
    {
        uint bits = 0;
        uint[] directions = s_directions[dimension];
        for (uint rest = (uint)index; rest != 0; rest &= rest - 1)
        {
            bits ^= directions[BitOperations.TrailingZeroCount(rest)];
        }

        return bits;
    }

    /// <summary>The first dimension is van der Corput's sequence; the others follow from the table.</summary>
    private static uint[][] DirectionNumbers() =>
        [
            [.. Enumerable.Range(0, Bits).Select(i => 1u << (Bits - 1 - i))],
            .. AnalysisTables
                .Rows("Uncertainty.Tables.direction-numbers")
                .Select(row => Directions((int)Number(row[1]), Number(row[2]), [.. row[3].Split(' ').Select(Number)])),
        ];

    /// <summary>v(i) = a1·v(i−1) ⊕ … ⊕ v(i−s) ⊕ (v(i−s) shifted right by s), with the polynomial's inner coefficients a.</summary>
    private static uint[] Directions(int degree, uint inner, uint[] first)
    {
        uint[] directions = new uint[Bits];
        for (int i = 0; i < degree; i++)
        {
            directions[i] = first[i] << (Bits - 1 - i);
        }

        for (int i = degree; i < Bits; i++)
        {
            uint value = directions[i - degree] ^ (directions[i - degree] >> degree);
            for (int k = 1; k < degree; k++)
            {
                value ^= (inner >> (degree - 1 - k) & 1) != 0 ? directions[i - k] : 0;
            }

            directions[i] = value;
        }

        return directions;
    }

    private static uint Number(string text) => uint.Parse(text, CultureInfo.InvariantCulture);

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
