using Coilwright.Application.Shops;
using Coilwright.Workshop.Entry;
using Microsoft.AspNetCore.Http;

namespace Coilwright.Web.Hosting;

/// <summary>A failure of ours becomes a page that says so; what was typed stays in the browser.</summary>
public sealed class InternalErrorPage(RequestDelegate next)
{
    public async Task InvokeAsync(HttpContext context)
    {
        try
        {
            await next(context);
        }
        catch (BadHttpRequestException wrong) when (!context.Response.HasStarted)
        {
            await Refusal.WriteAsync(context, wrong.StatusCode, "request", "This request could not be read: " + wrong.Message);
        }
        catch (Exception failure) when (!context.Response.HasStarted && ShopFault.Of(failure) is { } fault)
        {
            int status = fault.DiskIsFull ? StatusCodes.Status507InsufficientStorage : StatusCodes.Status403Forbidden;
            await Refusal.WriteAsync(
                context,
                status,
                "shop",
                char.ToUpperInvariant(fault.Words[0]) + fault.Words[1..] + " What you typed is still in the form: go back to it."
            );
        }
        catch (UnreadableRecordException record) when (!context.Response.HasStarted)
        {
            await Refusal.WriteAsync(
                context,
                StatusCodes.Status422UnprocessableEntity,
                "record",
                $"This cannot be shown: {record.Message}. What to do: {record.ToDo}."
            );
        }
        catch (Exception failure) when (!context.Response.HasStarted && !context.RequestAborted.IsCancellationRequested)
        {
            await Console.Error.WriteLineAsync($"coilwright: {context.Request.Method} {context.Request.Path}: {failure}");
            await Refusal.WriteAsync(
                context,
                StatusCodes.Status500InternalServerError,
                "request",
                "This is our mistake, not yours. What you typed is still in the form: go back to it."
            );
        }
    }
}
