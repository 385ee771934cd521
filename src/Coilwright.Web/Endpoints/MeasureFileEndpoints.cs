using System.Globalization;
using System.Text;
using Coilwright.Application.Measuring;
using Coilwright.Formats.Curves;
using Coilwright.Web.Forms;
using Coilwright.Web.Pages;
using Coilwright.Web.Views.Measuring;
using Coilwright.Workshop.Entry;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>Measurements that a file is handed in for: curves, recordings, gauge studies.</summary>
internal static class MeasureFileEndpoints
{
    private const long MostBytes = (long)MeasureSweepPage.MostMegabytes << 20;

    public static void MapMeasureFiles(this IEndpointRouteBuilder app)
    {
        app.MapGet("/measure/curve", () => MeasureEndpoints.Show<MeasureCurvePage>(FormValues.Nothing, [], null));
        app.MapPost("/measure/curve", CurveAsync);
        app.MapGet("/measure/gauge", () => MeasureEndpoints.Show<MeasureGaugePage>(FormValues.Nothing, [], null));
        app.MapPost("/measure/gauge", GaugeAsync);
        app.MapGet("/measure/sweep", () => MeasureEndpoints.Show<MeasureSweepPage>(FormValues.Nothing, [], null));
        app.MapPost("/measure/sweep", RecordingAsync).WithMetadata(new RequestSizeLimitAttribute(MostBytes));
        app.MapPost("/measure/signal.wav", SignalAsync);
        app.MapPost("/measure/impedance.csv", ImpedanceAsync);
    }

    private static async Task<IResult> CurveAsync(HttpRequest request, FitSentCurves fit, CancellationToken cancel)
    {
        IFormCollection form = await request.ReadFormAsync(cancel);
        List<SentCurve> curves = [];
        List<(string Name, string Value)> kept = [("resistance", form["resistance"].ToString())];
        for (int number = 0; number < MeasureCurvePage.Curves; number++)
        {
            string place = string.Create(CultureInfo.InvariantCulture, $"curves[{number}].");
            SentCurve sent = await SentAsync(form, place, cancel);
            curves.Add(sent);
            kept.AddRange([(place + "text", sent.Text), (place + "name", sent.Name)]);
            kept.AddRange([(place + "capacitance", sent.Capacitance), (place + "resistance", sent.Resistance)]);
        }

        ReadOutcome<FittedCurve> fitted = fit.Fit(new FitQuestion(curves, form["resistance"].ToString()));
        FitView? view = fitted.Value is { } value ? new FitView(value) : null;
        return MeasureEndpoints.Show<MeasureCurvePage>(FormValues.Of(kept), fitted.Problems, view);
    }

    /// <summary>A curve: the file, or what was kept of one or pasted.</summary>
    private static async Task<SentCurve> SentAsync(IFormCollection form, string place, CancellationToken cancel)
    {
        IFormFile? file = form.Files.GetFile(place + "file");
        bool chosen = file is { Length: > 0 };
        return new SentCurve(
            chosen ? file!.FileName : form[place + "name"].ToString(),
            chosen ? await SentFile.TextAsync(file!, cancel) : form[place + "text"].ToString(),
            form[place + "capacitance"].ToString(),
            form[place + "resistance"].ToString()
        );
    }

    private static async Task<IResult> GaugeAsync(HttpRequest request, StudyGauge gauge, CancellationToken cancel)
    {
        IFormCollection form = await request.ReadFormAsync(cancel);
        string text = form.Files.GetFile("file") is { Length: > 0 } file
            ? await SentFile.TextAsync(file, cancel)
            : form["table"].ToString();
        List<Problem> problems = [];
        double? tolerance = Number(form, "tolerance", problems),
            reference = Number(form, "reference", problems);
        ReadOutcome<GaugeStudy> study = gauge.Study(text, tolerance, reference);
        problems.AddRange(study.Problems.Select(InTable));
        FormValues typed = FormValues.Of([
            ("table", text),
            ("tolerance", form["tolerance"].ToString()),
            ("reference", form["reference"].ToString()),
        ]);
        GaugeView? view = problems.Count == 0 && study.Value is { } value ? new GaugeView(value, reference) : null;
        return MeasureEndpoints.Show<MeasureGaugePage>(typed, problems, view);
    }

    /// <summary>A problem of a line belongs to the field that holds the table.</summary>
    private static Problem InTable(Problem problem)
    {
        if (problem.Field is "tolerance" or "reference" or "table")
        {
            return problem;
        }

        string line = problem.Field.Length > 0 ? problem.Field + ": " : "";
        return problem with { Field = "table", Message = line + problem.Message };
    }

    private static double? Number(IFormCollection form, string name, List<Problem> problems)
    {
        string typed = form[name].ToString();
        if (typed.Trim().Length == 0)
        {
            return null;
        }

        if (!CountParser.TryNumber(typed, out double number))
        {
            problems.Add(new Problem(name, $"\"{typed.Trim()}\" is not a number", null, "a number in the unit of the values"));
            return null;
        }

        return number;
    }

    private static async Task<IResult> RecordingAsync(HttpRequest request, FitRecording recordings, CancellationToken cancel)
    {
        IFormCollection form = await request.ReadFormAsync(cancel);
        FormValues typed = new(form);
        IFormFile? file = form.Files.GetFile("recording");
        if (file is not { Length: > 0 })
        {
            Problem missing = new("recording", "choose the recording", null, "a WAV file of two channels");
            return MeasureEndpoints.Show<MeasureSweepPage>(typed, [missing], null);
        }

        ReadOutcome<FitAnswer> fitted = recordings.Fit(
            new RecordingQuestion(file.FileName, await SentFile.BytesAsync(file, cancel), SignalOf(form), form["resistor"].ToString())
            {
                InputResistance = form["inputResistance"].ToString(),
                InputCapacitance = form["inputCapacitance"].ToString(),
            },
            unitRequired: false
        );
        if (fitted.Value is not { } answer)
        {
            Problem[] problems = [.. fitted.Problems.Select(one => one.Field.Length > 0 ? one : one with { Field = "recording" })];
            return MeasureEndpoints.Show<MeasureSweepPage>(typed, problems, null);
        }

        return Answers.Page<MeasureSweepPage>(
            new()
            {
                ["Typed"] = typed,
                ["View"] = new FitView(FittedCurve.OfImpedance(answer)),
                ["Table"] = ImpedanceCsv.Write(answer.Table.Curve),
            }
        );
    }

    private static async Task<IResult> SignalAsync(HttpRequest request, MakeSignal signals, CancellationToken cancel)
    {
        IFormCollection form = await request.ReadFormAsync(cancel);
        ReadOutcome<MadeSignal> made = signals.Make(SignalOf(form), MakeSignal.UsualRateHz, unitRequired: false);
        return made.Value is { } signal
            ? Results.File(signal.Wave, "audio/wav", "signal.wav")
            : MeasureEndpoints.Show<MeasureSweepPage>(new FormValues(form), made.Problems, null);
    }

    /// <summary>The impedance that the page was given back, as a file.</summary>
    private static async Task<IResult> ImpedanceAsync(HttpRequest request, CancellationToken cancel)
    {
        IFormCollection form = await request.ReadFormAsync(cancel);
        return CurveTable.Read(form["curve"].ToString()).Value is { Curve: { ImpedanceOhm: not null } curve }
            ? Results.File(Encoding.UTF8.GetBytes(ImpedanceCsv.Write(curve)), "text/csv; charset=utf-8", "impedance.csv")
            : Answers.NotFoundPage();
    }

    private static SignalQuestion SignalOf(IFormCollection form) =>
        new(form["from"].ToString(), form["to"].ToString(), form["length"].ToString());
}
