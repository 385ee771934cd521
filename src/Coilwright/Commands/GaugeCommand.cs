using System.CommandLine;
using Coilwright.Analysis.GaugeStudies;
using Coilwright.Application.Measuring;
using Coilwright.Formats.Judgements;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Workshop.Entry;

namespace Coilwright.Commands;

/// <summary>
/// coilwright gauge READINGS.csv: how good a meter and its users are. Exit 1 when the gauge is not fit for the tolerance.
/// </summary>
public static class GaugeCommand
{
    public static Command Build(CommandContext desk)
    {
        Argument<string> readings = new("READINGS") { Description = "A table: part,person,value [kΩ],reference; - reads standard input" };
        Option<double?> tolerance = new Option<double?>("--tolerance")
        {
            Description = "Width of the tolerance, upper less lower limit, in the unit of the values",
            HelpName = "WIDTH",
        }.AsNumber();
        Option<double?> reference = new Option<double?>("--reference")
        {
            Description = "What one part read again and again should read: a type 1 study",
            HelpName = "VALUE",
        }.AsNumber();
        Option<bool> json = new("--json") { Description = "Write coilwright.gauge/1" };
        Command command = new("gauge", "A gauge study: repeatability and reproducibility, bias, linearity, type 1")
        {
            readings,
            tolerance,
            reference,
            json,
        };
        command.SetAction(
            async (parsed, cancel) =>
            {
                string path = parsed.GetRequiredValue(readings);
                string text = await InputFile.ReadAsync(path, cancel).ConfigureAwait(false);
                ReadOutcome<GaugeStudy> study = desk.Use<StudyGauge>().Study(text, parsed.GetValue(tolerance), parsed.GetValue(reference));
                bool ofTable = study.Problems.All(problem => problem.Field is not ("tolerance" or "reference" or "table"));
                GaugeFindings found = (
                    ofTable ? study.OrRefuse(path) : study.OrRefuseOptions(field => field == "table" ? "the table" : "--" + field)
                ).Found;
                await desk
                    .Output.WriteLineAsync(parsed.GetValue(json) ? GaugeJson.Write(found) : GaugeFormatter.Write(found))
                    .ConfigureAwait(false);
                return found.IsFit ? ExitCode.Done : ExitCode.AnswerIsNo;
            }
        );
        return command;
    }
}
