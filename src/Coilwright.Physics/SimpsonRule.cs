namespace Coilwright.Physics;

/// <summary>Simpson's rule over an even number of equal intervals: a third of a step times the weighted sum of the values.</summary>
public static class SimpsonRule
{
    /// <summary>Weight of a value in the sum: 1 at both ends, between them 4 and 2 in turn.</summary>
    /// <param name="place">Number of the value, 0 to <paramref name="intervals"/>.</param>
    /// <param name="intervals">Intervals, an even number.</param>
    public static int WeightAt(int place, int intervals)
    {
        if (place == 0 || place == intervals)
        {
            return 1;
        }

        return int.IsOddInteger(place) ? 4 : 2;
    }
}
