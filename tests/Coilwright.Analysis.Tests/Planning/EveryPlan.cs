using Coilwright.Analysis.Planning;

namespace Coilwright.Analysis.Tests.Planning;

/// <summary>Every plan of a small list in whole seconds, one after another.</summary>
internal sealed class EveryPlan(JobList list)
{
    private readonly (int Job, int Step)[] _steps = [.. list.Jobs.SelectMany((job, at) => job.Steps.Select((_, step) => (at, step)))];

    private double _best = double.PositiveInfinity;

    /// <summary>Least makespan or weighted lateness; infinite when there is no plan.</summary>
    public double Best()
    {
        Place([], 0);
        return _best;
    }

    private void Place(List<ScheduledStep> placed, double lateS)
    {
        if (placed.Count == _steps.Length)
        {
            Schedule whole = new(placed);
            double value = list.Want == PlanObjective.Tardiness ? lateS : whole.MakespanS;
            _best = value < _best && Fits(placed) ? value : _best;
            return;
        }

        (int job, int step) = _steps[placed.Count];
        foreach (StepOption option in list.Jobs[job].Steps[step].On)
        {
            (double fromS, double toS) = Window(placed, job, step);
            for (double startS = fromS; startS <= toS; startS++)
            {
                ScheduledStep one = new(job, step, option.Station, startS, startS + option.TimeS);
                double moreS = step == list.Jobs[job].Steps.Count - 1 ? Late(job, one.EndS) : 0;
                double least = list.Want == PlanObjective.Tardiness ? lateS + moreS : one.EndS;
                if (least < _best && placed.All(other => other.Station != one.Station || other.EndS <= startS || one.EndS <= other.StartS))
                {
                    Place([.. placed, one], lateS + moreS);
                }
            }
        }
    }

    /// <summary>Where a step may begin; three rounds of the hours are enough for all of these steps.</summary>
    private (double FromS, double ToS) Window(List<ScheduledStep> placed, int job, int step)
    {
        const double lastS = 24;
        if (step == 0)
        {
            return (list.Jobs[job].ReleaseS, lastS);
        }

        JobStep before = list.Jobs[job].Steps[step - 1];
        double endS = placed[^1].EndS;
        return (endS + before.MinGapS, Math.Min(lastS, endS + (before.MaxGapS ?? lastS)));
    }

    private double Late(int job, double endS) => list.Jobs[job].Weight * Math.Max(0, endS - (list.Jobs[job].DueS ?? endS));

    private bool Fits(List<ScheduledStep> placed) => ScheduleChecker.Clashes(list, placed).Count == 0;
}
