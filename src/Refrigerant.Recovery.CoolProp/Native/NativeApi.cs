using System.Collections.Generic;
using System.Runtime.InteropServices;

namespace Refrigerant.Recovery.CoolProp.Native;

/// <summary>
/// The functions of CoolProp's C interface (CoolPropLib.h) that this package calls. Handles, indices, lengths and error codes are
/// C <c>long</c>: 32 bits on Windows, the width of a pointer elsewhere. One subclass for each.
/// </summary>
/// <remarks>
/// Every call is made under <see cref="Gate"/>. Releases of CoolProp before 6.5 keep their handles in an unguarded map, and releases before
/// 8 share caches between states and fill the list of fluids unguarded at first use (CoolProp's issues 2210, 2787 and 2844), so that
/// separate handles on separate threads are not safe with every library that a user may bring.
/// </remarks>
internal abstract unsafe class NativeApi
{
    /// <summary>Held during every native call of the process: the same file opened twice is one library.</summary>
    public static object Gate { get; } = new();

    /// <summary>Whether C <c>long</c> has 32 bits on this system (Windows) rather than the width of a pointer.</summary>
    public static bool LongIs32Bits => RuntimeInformation.IsOSPlatform(OSPlatform.Windows);

    /// <summary>Binds every function.</summary>
    /// <param name="module">The library.</param>
    /// <param name="longIs32Bits">The width of C <c>long</c> in the library: <see cref="LongIs32Bits"/>, except in tests.</param>
    /// <param name="missing">The functions that the library does not export.</param>
    public static NativeApi Bind(NativeModule module, bool longIs32Bits, out IReadOnlyList<string> missing)
    {
        var exports = new ExportTable(module);
        NativeApi api = longIs32Bits ? new NativeApiLong32(exports) : new NativeApiLongPointer(exports);
        missing = exports.Missing;
        return api;
    }

    public abstract int ParameterIndex(byte* name);

    public abstract int InputPairIndex(byte* name);

    public abstract bool GlobalText(byte* parameter, byte* output, int length);

    public abstract bool FluidText(byte* fluid, byte* parameter, byte* output, int length);

    public abstract nint Create(byte* backend, byte* fluids, int* error, byte* message, int length);

    public abstract void Free(nint handle, int* error, byte* message, int length);

    public abstract void FluidNames(nint handle, byte* names, int* error, byte* message, int length);

    public abstract void SetFractions(nint handle, double* fractions, int count, int* error, byte* message, int length);

    public abstract int MoleFractions(nint handle, double* fractions, int capacity, int* error, byte* message, int length);

    public abstract int SaturatedMoleFractions(
        nint handle, byte* side, double* fractions, int capacity, int* error, byte* message, int length);

    public abstract void Update(nint handle, int pair, double first, double second, int* error, byte* message, int length);

    public abstract void SpecifyPhase(nint handle, byte* phase, int* error, byte* message, int length);

    public abstract void UnspecifyPhase(nint handle, int* error, byte* message, int length);

    public abstract double Output(nint handle, int parameter, int* error, byte* message, int length);

    public abstract double SaturatedOutput(nint handle, byte* side, int parameter, int* error, byte* message, int length);

    public abstract double Derivative(nint handle, int of, int by, int at, int* error, byte* message, int length);
}
