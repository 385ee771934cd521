using Coilwright.Analysis.Uncertainty;

namespace Coilwright.Analysis.Tests.Uncertainty;

public sealed class SobolSequenceTests
{
    // A (t,s)-sequence in base 2 keeps this whatever its scrambling.
    [Theory]
    [InlineData(1)]
    [InlineData(77)]
    public void The_first_1024_points_fall_one_into_each_of_1024_cells_of_every_dimension(int seed)
    {
        SobolSequence sequence = new(60, seed);
        for (int d = 0; d < 60; d++)
        {
            Assert.Equal(1024, Enumerable.Range(0, 1024).Select(k => (int)(sequence.At(k, d) * 1024)).Distinct().Count());
        }
    }

    // The first points that the authors of the direction numbers give, in the order of a Gray code; read in a reproduction of their
    // program.
    [Fact]
    public void The_first_points_of_three_dimensions_are_the_published_ones()
    {
        double[][] published =
        [
            [0, 0, 0],
            [0.5, 0.5, 0.5],
            [0.75, 0.25, 0.25],
            [0.25, 0.75, 0.75],
            [0.375, 0.375, 0.625],
            [0.875, 0.875, 0.125],
            [0.625, 0.125, 0.875],
            [0.125, 0.625, 0.375],
            [0.1875, 0.3125, 0.9375],
            [0.6875, 0.8125, 0.4375],
        ];
        for (int k = 0; k < published.Length; k++)
        {
            int gray = k ^ (k >> 1);
            Assert.Equal(published[k], Enumerable.Range(0, 3).Select(d => SobolSequence.UnscrambledBits(gray, d) / 4294967296.0));
        }
    }

    // Property A of Sobol (1976): the first 2^d points of d dimensions fall one into each of the halves' products. The table has it
    // throughout.
    [Theory]
    [InlineData(4)]
    [InlineData(10)]
    [InlineData(16)]
    public void The_first_points_fall_one_into_each_product_of_halves(int dimensions)
    {
        int points = 1 << dimensions;
        HashSet<int> cells = [];
        for (int k = 0; k < points; k++)
        {
            cells.Add(
                Enumerable.Range(0, dimensions).Aggregate(0, (cell, d) => cell << 1 | (int)(SobolSequence.UnscrambledBits(k, d) >> 31))
            );
        }

        Assert.Equal(points, cells.Count);
    }

    // The first two dimensions, of the van der Corput sequence and the polynomial x + 1, form a (0,2)-sequence.
    [Fact]
    public void The_first_two_dimensions_fill_every_elementary_box_of_256()
    {
        SobolSequence sequence = new(2, 5);
        for (int bits = 0; bits <= 8; bits++)
        {
            int columns = 1 << bits,
                rows = 256 >> bits;
            Assert.Equal(
                256,
                Enumerable
                    .Range(0, 256)
                    .Select(k => ((int)(sequence.At(k, 0) * columns), (int)(sequence.At(k, 1) * rows)))
                    .Distinct()
                    .Count()
            );
        }
    }

    [Fact]
    public void A_smooth_integral_comes_out_far_closer_than_random_points_would()
    {
        const int Dimensions = 12,
            Points = 4096;
        double squares = 0;
        for (int seed = 0; seed < 10; seed++)
        {
            SobolSequence sequence = new(Dimensions, seed);
            double mean = Enumerable
                .Range(0, Points)
                .Average(k =>
                    Enumerable.Range(0, Dimensions).Aggregate(1.0, (product, d) => product * (1 + 0.5 * (sequence.At(k, d) - 0.5)))
                );
            squares += (mean - 1) * (mean - 1);
        }

        // The integrand's variance is (1 + 1/48)^12 − 1, so that 4,096 random points would be off by 0.0083.
        double random = Math.Sqrt((Math.Pow(1 + 1 / 48.0, Dimensions) - 1) / Points);
        Assert.InRange(Math.Sqrt(squares / 10), 0, random / 8);
    }

    [Fact]
    public void The_same_seed_gives_the_same_points_and_another_seed_others()
    {
        SobolSequence first = new(3, 9),
            second = new(3, 9),
            other = new(3, 10);
        Assert.Equal(Enumerable.Range(0, 100).Select(k => first.At(k, 2)), Enumerable.Range(0, 100).Select(k => second.At(k, 2)));
        Assert.NotEqual(Enumerable.Range(0, 100).Select(k => first.At(k, 2)), Enumerable.Range(0, 100).Select(k => other.At(k, 2)));
    }
}
