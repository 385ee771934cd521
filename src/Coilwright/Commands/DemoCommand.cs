using System.CommandLine;
using Coilwright.Application.Shops;
using Coilwright.Demo;
using Coilwright.Input;

namespace Coilwright.Commands;

/// <summary>coilwright demo: makes the invented shop, runs the job from recipe to verdict, and serves the pages.</summary>
public static class DemoCommand
{
    public static Command Build(CommandContext desk)
    {
        Option<bool> noServe = new("--no-serve") { Description = "Stop after the walk; serve no pages" };
        Option<string?> shop = new("--shop")
        {
            Description = "A new file to make the shop in; one in the temporary folder unless said",
            HelpName = "FILE",
        };
        Option<int> port = new Option<int>("--port")
        {
            Description = "Port on this computer, 0 to take a free one",
            DefaultValueFactory = _ => ServeCommand.UsualPort,
        }.AsCount();
        Command command = new("demo", "Makes an invented shop and shows the job from recipe to verdict") { noServe, shop, port };
        command.SetAction(
            async (parsed, cancel) =>
            {
                Pages.CheckPort(parsed.GetValue(port));
                string path = parsed.GetValue(shop)
                    ?? Path.Combine(Directory.CreateTempSubdirectory("coilwright-demo-").FullName, "demo.db");
                if (Path.Exists(path))
                {
                    throw WrongInputException.About(
                        "--shop",
                        $"{path} exists; the demo makes its own shop and never writes into another",
                        "a file that does not exist yet"
                    );
                }

                await DemoShop.MakeAsync(path, desk.Time.GetUtcNow(), desk.Output, cancel).ConfigureAwait(false);
                await desk.Output.WriteLineAsync($"\nThe shop is in {path}").ConfigureAwait(false);
                if (parsed.GetValue(noServe))
                {
                    return ExitCode.Done;
                }

                await using OpenShop open = await OpenShop.OpenAsync(path, desk, cancel).ConfigureAwait(false);
                return await Pages
                    .ServeAsync(open, new(System.Net.IPAddress.Loopback, parsed.GetValue(port)), new ServingOptions(), desk, cancel)
                    .ConfigureAwait(false);
            }
        );
        return command;
    }
}
