using System.CommandLine;
using Coilwright.Analysis.Planning;
using Coilwright.Application.Plans;
using Coilwright.Formats.Plans;
using Coilwright.Input;
using Coilwright.Output;

namespace Coilwright.Commands;

/// <summary>coilwright plan JOBS: when and where each step is done, and what makes a job late. Exit 1 when there is no plan.</summary>
public static class PlanCommand
{
    private const double LeastS = 0.1,
        MostS = 86400;

    public static Command Build(CommandContext desk)
    {
        Argument<string> jobs = new("JOBS") { Description = "Stations, jobs and set-ups (coilwright.jobs/1); - reads standard input" };
        Option<double> seconds = new Option<double>("--seconds")
        {
            Description = "Longest search, 0.1 to 86400; it ends sooner where the best plan is proved",
            DefaultValueFactory = _ => 30,
        }.AsNumber();
        Option<bool> json = new("--json") { Description = "Write coilwright.plan/1" };
        Command command = new(
            "plan",
            "When and where each step of each job is done, how far from the best it can be, and what makes a job late"
        )
        {
            jobs,
            seconds,
            json,
        };
        command.SetAction(
            async (parsed, cancel) =>
            {
                string path = parsed.GetRequiredValue(jobs);
                double most = Seconds(parsed.GetValue(seconds));
                JobList list = JobsReader.Read(await InputFile.ReadAsync(path, cancel).ConfigureAwait(false)).OrRefuse(path);
                Schedule plan = await Progress
                    .ShowAsync(desk, "Planning", () => desk.Use<PlanJobs>().Plan(list, most, cancel), cancel)
                    .ConfigureAwait(false);
                if (parsed.GetValue(json))
                {
                    await desk.Output.WriteLineAsync(PlanJson.Write(list, plan, most)).ConfigureAwait(false);
                }
                else
                {
                    ScheduleFormatter.Write(desk.Output, list, plan, most);
                }

                int found = plan.Feasible ? ExitCode.Done : ExitCode.AnswerIsNo;
                return plan.Stopped ? ExitCode.Stopped : found;
            }
        );
        return command;
    }

    private static double Seconds(double asked) =>
        asked is >= LeastS and <= MostS
            ? asked
            : throw WrongInputException.About(
                "--seconds",
                "outside what is possible here",
                FormattableString.Invariant($"{LeastS} to {MostS}")
            );
}
