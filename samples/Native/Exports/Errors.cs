using System;
using System.Runtime.InteropServices;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Samples.Native;

/// <summary>Turns an exception into a status, and keeps its text for the thread that caused it.</summary>
internal static unsafe class Errors
{
    [ThreadStatic]
    private static string? t_last;

    public static Status Report(Exception exception)
    {
        t_last = exception.Message;
        return exception switch
        {
            InvalidHandleException => Status.InvalidHandle,
            UnknownFluidException => Status.UnknownFluid,
            PropertyRangeException => Status.OutOfRange,
            ConvergenceException => Status.NotConverged,
            ArgumentException or FormatException => Status.InvalidArgument,
            _ => Status.Internal,
        };
    }

    /// <summary>The reference behind a pointer that must not be null.</summary>
    public static ref T Deref<T>(T* pointer, string name)
        where T : unmanaged
    {
        if (pointer is null)
        {
            throw new ArgumentNullException(name);
        }

        return ref *pointer;
    }

    [UnmanagedCallersOnly(EntryPoint = "rr_error_text")]
    public static int ErrorText(byte* buffer, int size) => Text.Write(t_last ?? string.Empty, buffer, size);
}
