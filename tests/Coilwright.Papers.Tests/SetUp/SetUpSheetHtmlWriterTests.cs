using System.Diagnostics;
using System.Text.RegularExpressions;
using Coilwright.Papers.SetUp;
using Coilwright.Workshop.Machines;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Papers.Tests.SetUp;

public sealed partial class SetUpSheetHtmlWriterTests
{
    [Fact]
    public void Story_1_the_card_carries_recipe_revision_turns_direction_pitch_tension_speed_and_ohms()
    {
        string text = TextOf(SetUpSheetHtmlWriter.Render(Example.SetUp));

        foreach (
            string needed in (string[])
                [
                    "Harbour bridge",
                    "Revision C",
                    "Tin Shed Pickups",
                    "2026-03-02",
                    "Page 1 of 1",
                    "8,000",
                    "AWG 42 plain enamel",
                    "counter-clockwise from start to finish, seen from the top",
                    "0.190 mm",
                    "57.9",
                    "14.0 gf",
                    "1,200 rpm",
                    "6.18 kΩ",
                    "5.93 kΩ",
                    "6.43 kΩ",
                    "6.7 min",
                ]
        )
        {
            Assert.Contains(needed, text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void The_meter_is_foretold_for_the_room_and_for_20_degrees()
    {
        string text = TextOf(SetUpSheetHtmlWriter.Render(Example.SetUp));

        Assert.Contains("Meter at 23.0 °C", text, StringComparison.Ordinal);
        Assert.Contains("6.25 kΩ", text, StringComparison.Ordinal); // 6.18 kΩ × (1 + 0.00393 × 3)
    }

    [Fact]
    public void Each_caution_stands_boxed_in_the_step_it_belongs_to()
    {
        string html = SetUpSheetHtmlWriter.Render(Example.SetUp);
        string[] steps = [.. Step().Matches(html).Select(match => match.Value)];

        Assert.Equal(5, steps.Length);
        Assert.Contains(
            Cautions.Spindle,
            TextOf(steps.Single(step => step.Contains("Mount the bobbin", StringComparison.Ordinal))),
            StringComparison.Ordinal
        );
        Assert.Contains(
            Cautions.FineWire,
            TextOf(steps.Single(step => step.Contains("Thread the wire", StringComparison.Ordinal))),
            StringComparison.Ordinal
        );
        Assert.Contains(
            Cautions.EndFume,
            TextOf(steps.Single(step => step.Contains("Bare the ends", StringComparison.Ordinal))),
            StringComparison.Ordinal
        );
        Assert.Equal(3, Regex.Count(html, "class=\"caution\""));
    }

    [Fact]
    public void Every_page_ends_with_the_closing_line()
    {
        WindingSetUp two = Example.SetUp with { Coils = [Example.SetUp.Coils[0], Example.SetUp.Coils[0] with { Name = "other" }] };
        string html = SetUpSheetHtmlWriter.Render(two);

        Assert.Equal(2, Regex.Count(TextOf(html), Regex.Escape(Cautions.ClosingLine)));
        Assert.Contains("page 2 of 2", html, StringComparison.Ordinal);
    }

    [Fact]
    public void The_counter_stop_is_divided_by_the_correction()
    {
        // Story 12: correction 1.006, 5,000 real turns, stop at 4,970.
        WindingSetUp set = Example.SetUp with
        {
            On = new Machine
            {
                Name = "Winder 2",
                Kind = MachineKind.Gear,
                Counter = new CounterTest(100.6, 100),
            },
            Coils = [Example.SetUp.Coils[0] with { Turns = 5000 }],
        };

        Assert.Contains("<p class=\"stop\">4,970</p>", SetUpSheetHtmlWriter.Render(set), StringComparison.Ordinal);
    }

    [Fact]
    public void The_counter_stop_is_set_in_56_px_or_more()
    {
        Match size = StopSize().Match(SetUpSheetStyle.Css);

        Assert.True(size.Success && int.Parse(size.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture) >= 56);
    }

    [Fact]
    public void Names_from_a_recipe_cannot_break_the_markup()
    {
        string html = SetUpSheetHtmlWriter.Render(Example.SetUp with { RecipeName = "<script>alert(1)</script> & co" });

        Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("&lt;script&gt;", html, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("A4")]
    [InlineData("letter")]
    public void One_coil_prints_on_one_page(string paper)
    {
        string? browser = Program("chromium"),
            pdfInfo = Program("pdfinfo");
        Assert.True(browser is not null && pdfInfo is not null, "chromium and pdfinfo (poppler-utils) are needed: ./test installs them");
        DirectoryInfo folder = Directory.CreateTempSubdirectory("coilwright-sheet-");
        string page = Path.Combine(folder.FullName, "sheet.html"),
            pdf = Path.Combine(folder.FullName, "sheet.pdf");
        File.WriteAllText(
            page,
            SetUpSheetHtmlWriter.Render(Example.SetUp).Replace("size: auto", "size: " + paper, StringComparison.Ordinal)
        );

        Run(
            browser,
            "--headless=new",
            "--no-sandbox",
            "--disable-gpu",
            "--user-data-dir=" + folder.FullName,
            "--no-pdf-header-footer",
            "--print-to-pdf=" + pdf,
            "file://" + page
        );

        Assert.Contains("Pages:           1\n", Run(pdfInfo, pdf), StringComparison.Ordinal);
        folder.Delete(recursive: true);
    }

    private static string? Program(string name) =>
        (Environment.GetEnvironmentVariable("PATH") ?? "")
            .Split(Path.PathSeparator)
            .Select(folder => Path.Combine(folder, name))
            .FirstOrDefault(File.Exists);

    private static string Run(string program, params string[] arguments)
    {
        using Process process = Process.Start(
            new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true }
        )!;
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return output;
    }

    private static string TextOf(string html) => System.Net.WebUtility.HtmlDecode(Spaces().Replace(Tag().Replace(html, " "), " "));

    [GeneratedRegex("<li><h2>.*?</li>")]
    private static partial Regex Step();

    [GeneratedRegex("<[^>]+>")]
    private static partial Regex Tag();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();

    [GeneratedRegex(@"\.stop \{ font-size: (\d+)px")]
    private static partial Regex StopSize();
}
