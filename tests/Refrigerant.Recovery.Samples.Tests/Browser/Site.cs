using System;
using System.IO;
using System.Net;
using System.Threading.Tasks;

namespace Refrigerant.Recovery.Samples.Tests.Browser;

/// <summary>The documentation site on this machine's loopback, below a folder, as a plain file server gives it out.</summary>
internal sealed class Site : IDisposable
{
    private const string Prefix = "/docs/";

    private readonly HttpListener _listener = new();

    public Site()
    {
        Root = new Uri($"http://localhost:{Random.Shared.Next(20000, 60000)}{Prefix}");
        _listener.Prefixes.Add(Root.AbsoluteUri);
        _listener.Start();
        _ = Serve();
    }

    public static string Folder { get; } = Repository.At("docs", "_site");

    public Uri Root { get; }

    public void Dispose() => _listener.Close();

    private async Task Serve()
    {
        while (_listener.IsListening)
        {
            HttpListenerContext context;
            try
            {
                context = await _listener.GetContextAsync();
            }
            catch (Exception exception) when (exception is HttpListenerException or ObjectDisposedException)
            {
                return;
            }

            _ = Task.Run(() => Answer(context));
        }
    }

    private static void Answer(HttpListenerContext context)
    {
        using HttpListenerResponse response = context.Response;
        string path = Path.Combine(Folder, context.Request.Url!.AbsolutePath[Prefix.Length..]);
        if (path.EndsWith('/'))
        {
            path += "index.html";
        }

        if (!File.Exists(path))
        {
            response.StatusCode = (int)HttpStatusCode.NotFound;
            return;
        }

        response.ContentType = Path.GetExtension(path) switch
        {
            ".html" => "text/html; charset=utf-8",
            ".js" => "text/javascript",
            ".css" => "text/css",
            ".wasm" => "application/wasm",
            ".svg" => "image/svg+xml",
            ".json" => "application/json",
            _ => "application/octet-stream",
        };
        response.Headers["Cache-Control"] = path.Contains("_framework", StringComparison.Ordinal) ? "max-age=3600" : "no-cache";
        response.OutputStream.Write(File.ReadAllBytes(path));
    }
}
