using Coilwright.Application.Backups;
using Coilwright.Web.Hosting;
using Coilwright.Web.Pages;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>The shop's backups: which there are, and one made now.</summary>
internal static class BackupEndpoints
{
    public static void MapBackups(this IEndpointRouteBuilder app)
    {
        app.MapGet("/shop/backups", async (string? made, BackUpShop backUp, TimeProvider time, CancellationToken cancel) =>
            await PageAsync(made is not null, StatusCodes.Status200OK, backUp, time, cancel)
        );
        app.MapPost("/shop/backups", MakeAsync).WithMetadata(new ChangesNothing());
    }

    private static async Task<IResult> MakeAsync(BackUpShop backUp, TimeProvider time, CancellationToken cancel)
    {
        await Task.Run(() => backUp.TakeAllAsync(cancel), cancel);
        return backUp.Failures.Count == 0
            ? Results.LocalRedirect("/shop/backups?made=yes")
            : await PageAsync(made: false, StatusCodes.Status422UnprocessableEntity, backUp, time, cancel);
    }

    private static async Task<IResult> PageAsync(bool made, int status, BackUpShop backUp, TimeProvider time, CancellationToken cancel) =>
        Answers.Page<BackupsPage>(
            new()
            {
                ["Status"] = await backUp.StatusAsync(TimeSpan.Zero, cancel),
                ["Folders"] = backUp.Folders(),
                ["Plan"] = backUp.Plan,
                ["ShopPath"] = backUp.ShopPath,
                ["Zone"] = time.LocalTimeZone,
                ["Made"] = made,
            },
            status
        );
}
