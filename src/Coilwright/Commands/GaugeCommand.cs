using System.CommandLine;
using Coilwright.Analysis.GaugeStudies;
using Coilwright.Formats.Judgements;
using Coilwright.Formats.Tables;
using Coilwright.Input;
using Coilwright.Output;

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
                GaugeTable table = GaugeTable.Read(await InputFile.ReadAsync(path, cancel).ConfigureAwait(false)).OrRefuse(path);
                double? width = parsed.GetValue(tolerance);
                if (width is not null and not (> 0 and <= GaugeTable.LargestValue))
                {
                    throw WrongInputException.About("--tolerance", "a tolerance has a width", "above 0, up to 1,000,000,000,000");
                }

                if (parsed.GetValue(reference) is { } shown && Math.Abs(shown) > GaugeTable.LargestValue)
                {
                    throw WrongInputException.About("--reference", "no gauge shows this", GaugeTable.AllowedValues);
                }

                GaugeFindings found = GaugeFindings.TryStudy(
                    table.Readings,
                    table.References,
                    table.Unit,
                    width,
                    parsed.GetValue(reference)
                )
                    ?? throw WrongInputException.About(
                        "the table",
                        "it holds no study",
                        "two or more parts read by each of two or more persons equally often, twice or more; or --reference and two or "
                            + "more readings that differ; or three or more readings with a column \"reference\" of different values"
                    );
                await desk
                    .Output.WriteLineAsync(parsed.GetValue(json) ? GaugeJson.Write(found) : GaugeFormatter.Write(found))
                    .ConfigureAwait(false);
                return found.IsFit ? ExitCode.Done : ExitCode.AnswerIsNo;
            }
        );
        return command;
    }
}
