using Coilwright.Workshop.Instruments;

namespace Coilwright.Workshop.Tests.Instruments;

public sealed class TurnCountTests
{
    [Fact]
    public void A_reading_stands_for_itself_so_that_a_lost_one_loses_nothing()
    {
        TurnCount count = new(correction: 1.006, stop: 8000);
        count.Add(null, 100);
        count.Add(null, 100);
        CountState state = count.Add(null, 7000); // the link was away meanwhile
        Assert.Equal(7042, state.Turns, 1e-9);
        Assert.Equal(958, state.ToStop!.Value, 1e-9);
        Assert.Equal(0, count.Jumps);
    }

    [Fact]
    public void The_warning_comes_before_the_stop_and_each_is_told_once()
    {
        TurnCount count = new(stop: 500);
        List<(double, CountNote)> told = [];
        for (int n = 1; n <= 510; n++)
        {
            CountState state = count.Pulse(null);
            if (state.Note != CountNote.None)
            {
                told.Add((state.Turns, state.Note));
            }
        }

        Assert.Equal([(400, CountNote.Soon), (500, CountNote.Stop)], told);
        Assert.Equal(-10, count.State.ToStop);
    }

    [Fact]
    public void A_fast_winder_is_warned_five_seconds_before()
    {
        TurnCount count = new(stop: 8000);
        double soon = 0;
        for (int n = 1; n <= 8000 && soon == 0; n++)
        {
            soon = count.Pulse(TimeSpan.FromSeconds(n / 50.0)).Note == CountNote.Soon ? n : 0; // 3,000 rpm
        }

        Assert.InRange(soon, 7750 - 5, 7750 + 5);
    }

    [Fact]
    public void A_counter_that_jumps_back_is_told_and_believed()
    {
        TurnCount count = new(stop: 100);
        count.Add(null, 100);
        CountState back = count.Add(null, 40);
        Assert.Equal((CountNote.Back, 100, 40), (back.Note, back.Before, back.Turns));
        Assert.Equal(1, count.Jumps);
        Assert.Equal(CountNote.Stop, count.Add(null, 100).Note); // the stop is told anew
    }

    [Fact]
    public void A_digit_misread_is_told_as_faster_than_a_winder_turns()
    {
        TurnCount count = new();
        count.Add(TimeSpan.FromSeconds(1), 1200);
        Assert.Equal(CountNote.None, count.Add(TimeSpan.FromSeconds(2), 1220).Note);
        Assert.Equal(CountNote.Ahead, count.Add(TimeSpan.FromSeconds(3), 7240).Note);
        Assert.Equal(CountNote.Back, count.Add(TimeSpan.FromSeconds(4), 1260).Note);
    }

    [Fact]
    public void Speed_is_that_of_the_last_two_seconds()
    {
        TurnCount count = new();
        for (int n = 0; n <= 200; n++)
        {
            count.Add(TimeSpan.FromSeconds(n / 20.0), n);
        }

        Assert.Equal(1200, count.Rpm(TimeSpan.FromSeconds(10)), 1e-6);
        Assert.Equal(0, count.Rpm(TimeSpan.FromSeconds(13)));
    }

    [Fact]
    public void Turns_that_end_before_the_stop_are_noticed()
    {
        TimeSpan quiet = TimeSpan.FromSeconds(3);
        TurnCount count = new(stop: 8000);
        Assert.False(count.EndedEarly(TimeSpan.FromSeconds(100), quiet)); // it has not begun
        count.Add(TimeSpan.FromSeconds(1), 3000);
        count.Add(TimeSpan.FromSeconds(2), 3020);
        Assert.False(count.EndedEarly(TimeSpan.FromSeconds(4), quiet));
        Assert.True(count.EndedEarly(TimeSpan.FromSeconds(6), quiet));
        count.Add(TimeSpan.FromSeconds(7), 8000);
        Assert.False(count.EndedEarly(TimeSpan.FromSeconds(60), quiet)); // ended where it should
    }
}
