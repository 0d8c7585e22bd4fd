using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Threading;
using System.Threading.Tasks;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Records;

namespace Refrigerant.Recovery.Samples.Web;

/// <summary>Plans over HTTP.</summary>
public static class PlanService
{
    /// <summary>A job with all its hoses and cylinders has some kilobytes; one of this size is a mistake, or worse.</summary>
    private const long LongestJob = 256 * 1024;

    /// <summary>The application; its only route is POST /plans.</summary>
    /// <param name="args">As of the command line, such as --urls http://127.0.0.1:5080.</param>
    public static WebApplication Build(string[] args)
    {
        WebApplicationBuilder builder = WebApplication.CreateBuilder(args);
        builder.Services.AddProblemDetails();
        builder.WebHost.ConfigureKestrel(server => server.Limits.MaxRequestBodySize = LongestJob);
        WebApplication app = builder.Build();
        app.UseExceptionHandler(new ExceptionHandlerOptions
        {
            StatusCodeSelector = e => e is BadHttpRequestException bad ? bad.StatusCode : StatusCodes.Status500InternalServerError,
        });
        #region endpoint
        app.MapPost("/plans", async (HttpRequest request, bool? course, CancellationToken cancellation) =>
        {
            using var body = new MemoryStream();
            await request.Body.CopyToAsync(body, cancellation);
            if (!RecoveryJobJson.TryRead(body.ToArray(), null, out RecoveryJob? job, out IReadOnlyList<DocumentError> errors))
            {
                return Results.ValidationProblem(
                    errors.GroupBy(error => error.Path).ToDictionary(place => place.Key, place => place.Select(error => error.Message).ToArray()),
                    title: "The job cannot be read.");
            }

            try
            {
                // A plan takes some hundred milliseconds of computing: off the request's thread, and only so many at a time.
                RecoveryPlan plan = await Limited(() => RecoveryPlanner.Plan(job), cancellation);
                return Results.Ok(PlanDocument.From(plan, course ?? false));
            }
            catch (Exception e) when (e is ArgumentException or PropertyRangeException or ConvergenceException)
            {
                return Results.Problem(e.Message, statusCode: StatusCodes.Status422UnprocessableEntity, title: "The job cannot be planned.");
            }
        });
        #endregion
        return app;
    }

    #region limited
    private static readonly SemaphoreSlim Workers = new(Environment.ProcessorCount);

    private static async Task<T> Limited<T>(Func<T> work, CancellationToken cancellation)
    {
        await Workers.WaitAsync(cancellation);
        Task<T> running = Task.Run(work, CancellationToken.None);
        _ = running.ContinueWith(_ => Workers.Release(), TaskScheduler.Default);

        // The caller who left is not waited for; the worker is free again when its computation ends.
        return await running.WaitAsync(cancellation);
    }
    #endregion
}
