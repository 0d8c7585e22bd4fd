using System;
using System.Runtime.CompilerServices;

namespace Refrigerant.Recovery.CoolProp.Native;

/// <summary>One CoolProp state: input in, outputs out. Callers hold <see cref="NativeApi.Gate"/> over everything that belongs together.</summary>
/// <remarks>The message buffers are not cleared but for their first byte: clearing them would cost more than some of the calls.</remarks>
[SkipLocalsInit]
internal sealed unsafe class NativeState : IDisposable
{
    private const int MessageLength = 2048;
    private const int NamesLength = 4096;
    private const int MaximumComponents = 64;

    /// <summary>CoolProp marks a missing value by infinity or by a number that no property in SI units reaches.</summary>
    private const double Huge = 1e30;

    private static readonly byte[] Backend = NativeText.Encode("HEOS");
    private static readonly byte[] LiquidSide = NativeText.Encode("liquid");
    private static readonly byte[] VaporSide = NativeText.Encode("gas");

    private readonly NativeApi _api;
    private readonly IndexTable _indices;
    private readonly StateHandle _handle;

    /// <summary>Creates a state on CoolProp's multiparameter Helmholtz-energy backend.</summary>
    /// <param name="library">The library.</param>
    /// <param name="fluids">One name, or several with '&amp;' between them.</param>
    /// <exception cref="CoolPropException">CoolProp does not know a name or a pair of components.</exception>
    public NativeState(CoolPropLibrary library, string fluids)
    {
        _api = library.Api;
        _indices = library.Indices;
        Name = fluids;
        byte* message = stackalloc byte[MessageLength];
        message[0] = 0;
        lock (NativeApi.Gate)
        {
            int error;
            fixed (byte* backend = Backend)
            fixed (byte* names = NativeText.Encode(fluids))
            {
                _handle = new StateHandle(_api, _api.Create(backend, names, &error, message, MessageLength));
            }

            Check(error, message, "loading the fluid");
        }
    }

    /// <summary>The name or names that it was created by.</summary>
    public string Name { get; }

    public void Dispose() => _handle.Dispose();

    public string[] ComponentNames()
    {
        byte* message = stackalloc byte[NamesLength];
        message[0] = 0;
        byte* names = stackalloc byte[NamesLength];
        names[0] = 0;
        int error;
        _api.FluidNames(Handle, names, &error, message, NamesLength);
        GC.KeepAlive(_handle);
        Check(error, message, "reading the component names");
        return NativeText.Decode(names, NamesLength).Split(',');
    }

    public void SetMoleFractions(double[] fractions)
    {
        byte* message = stackalloc byte[MessageLength];
        message[0] = 0;
        int error;
        fixed (double* values = fractions)
        {
            _api.SetFractions(Handle, values, fractions.Length, &error, message, MessageLength);
        }

        GC.KeepAlive(_handle);
        Check(error, message, "setting the mole fractions");
    }

    public double[] MoleFractions()
    {
        byte* message = stackalloc byte[MessageLength];
        message[0] = 0;
        double* values = stackalloc double[MaximumComponents];
        int error;
        int count = _api.MoleFractions(Handle, values, MaximumComponents, &error, message, MessageLength);
        GC.KeepAlive(_handle);
        Check(error, message, "reading the mole fractions");
        return Copy(values, count, "reading the mole fractions");
    }

    public double[] MoleFractions(bool liquid)
    {
        byte* message = stackalloc byte[MessageLength];
        message[0] = 0;
        double* values = stackalloc double[MaximumComponents];
        int error;
        int count;
        fixed (byte* side = liquid ? LiquidSide : VaporSide)
        {
            count = _api.SaturatedMoleFractions(Handle, side, values, MaximumComponents, &error, message, MessageLength);
        }

        GC.KeepAlive(_handle);
        Check(error, message, "reading the mole fractions of a phase");
        return Copy(values, count, "reading the mole fractions of a phase");
    }

    /// <summary>Brings the state to two inputs.</summary>
    /// <exception cref="CoolPropException">CoolProp refuses the inputs or finds no solution.</exception>
    public void Update(InputPair pair, double first, double second)
    {
        if (TryUpdate(pair, first, second) is CoolPropException failure)
        {
            throw failure;
        }
    }

    /// <summary>Brings the state to two inputs; the failure, or null.</summary>
    public CoolPropException? TryUpdate(InputPair pair, double first, double second)
    {
        byte* message = stackalloc byte[MessageLength];
        message[0] = 0;
        int error;
        _api.Update(Handle, _indices[pair], first, second, &error, message, MessageLength);
        GC.KeepAlive(_handle);
        return error == 0
            ? null
            : Failure(error, message, FormattableString.Invariant($"{IndexTable.Name(pair)} of {first:G7} and {second:G7}"));
    }

    /// <summary>Makes later updates keep to one phase, until <see cref="FreePhase"/>.</summary>
    public void ImposePhase(string phase)
    {
        byte* message = stackalloc byte[MessageLength];
        message[0] = 0;
        int error;
        fixed (byte* name = NativeText.Encode(phase))
        {
            _api.SpecifyPhase(Handle, name, &error, message, MessageLength);
        }

        GC.KeepAlive(_handle);
        Check(error, message, "imposing " + phase);
    }

    public void FreePhase()
    {
        byte* message = stackalloc byte[MessageLength];
        message[0] = 0;
        int error;
        _api.UnspecifyPhase(Handle, &error, message, MessageLength);
        GC.KeepAlive(_handle);
        Check(error, message, "releasing the imposed phase");
    }

    /// <summary>A property of the present state or of the fluid, in SI units on a mass basis.</summary>
    /// <exception cref="CoolPropException">CoolProp has no value, or gave one that is not a number.</exception>
    public double Output(Property property)
    {
        byte* message = stackalloc byte[MessageLength];
        message[0] = 0;
        int error;
        double value = _api.Output(Handle, _indices[property], &error, message, MessageLength);
        GC.KeepAlive(_handle);
        string operation = IndexTable.Name(property);
        Check(error, message, operation);
        return Finite(value, operation);
    }

    /// <summary>A property of the liquid or vapor of the present two-phase state.</summary>
    public double SaturatedOutput(bool liquid, Property property)
    {
        byte* message = stackalloc byte[MessageLength];
        message[0] = 0;
        int error;
        double value;
        fixed (byte* side = liquid ? LiquidSide : VaporSide)
        {
            value = _api.SaturatedOutput(Handle, side, _indices[property], &error, message, MessageLength);
        }

        GC.KeepAlive(_handle);
        string operation = IndexTable.Name(property);
        Check(error, message, operation);
        return Finite(value, operation);
    }

    /// <summary>The partial derivative of one property by another at constant third, of a homogeneous state.</summary>
    public double Derivative(Property of, Property by, Property at)
    {
        byte* message = stackalloc byte[MessageLength];
        message[0] = 0;
        int error;
        double value = _api.Derivative(Handle, _indices[of], _indices[by], _indices[at], &error, message, MessageLength);
        GC.KeepAlive(_handle);
        const string Operation = "a partial derivative";
        Check(error, message, Operation);
        return Finite(value, Operation);
    }

    private nint Handle => _handle.DangerousGetHandle();

    private double[] Copy(double* values, int count, string operation)
    {
        if (count < 0 || count > MaximumComponents)
        {
            throw new CoolPropException(Name, operation, FormattableString.Invariant($"it gave {count} components."));
        }

        return new ReadOnlySpan<double>(values, count).ToArray();
    }

    private double Finite(double value, string operation) =>
        Math.Abs(value) < Huge
            ? value
            : throw new CoolPropException(Name, operation, FormattableString.Invariant($"it gave {value:G7}, which is no value."));

    private void Check(int error, byte* message, string operation)
    {
        if (error != 0)
        {
            throw Failure(error, message, operation);
        }
    }

    private CoolPropException Failure(int error, byte* message, string operation)
    {
        string text = NativeText.Decode(message, MessageLength).Trim();
        return new CoolPropException(
            Name, operation, text.Length > 0 ? text : FormattableString.Invariant($"error code {error} without a message."));
    }
}
