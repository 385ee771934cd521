using Coilwright.Workshop.Entry;
using Microsoft.AspNetCore.Http;

namespace Coilwright.Web.Hosting;

/// <summary>A failure of ours becomes a page that says so; what was typed stays in the browser.</summary>
public sealed class OurMistake(RequestDelegate next)
{
    public async Task InvokeAsync(HttpContext context)
    {
        try
        {
            await next(context);
        }
        catch (BadHttpRequestException wrong) when (!context.Response.HasStarted)
        {
            await SayAsync(context, wrong.StatusCode, "This request could not be read: " + wrong.Message);
        }
        catch (UnreadableRecordException record) when (!context.Response.HasStarted)
        {
            await SayAsync(context, StatusCodes.Status422UnprocessableEntity, $"This cannot be shown: {record.Message}. What to do: {record.ToDo}.");
        }
        catch (Exception failure) when (!context.Response.HasStarted && !context.RequestAborted.IsCancellationRequested)
        {
            await Console.Error.WriteLineAsync($"coilwright: {context.Request.Method} {context.Request.Path}: {failure}");
            await SayAsync(context, StatusCodes.Status500InternalServerError, "This is our mistake, not yours. What you typed is still in the form: go back to it.");
        }
    }

    private static Task SayAsync(HttpContext context, int status, string text)
    {
        context.Response.StatusCode = status;
        context.Response.ContentType = "text/plain; charset=utf-8";
        return context.Response.WriteAsync(text);
    }
}
