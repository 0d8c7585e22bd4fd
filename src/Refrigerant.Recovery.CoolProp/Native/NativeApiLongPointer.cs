namespace Refrigerant.Recovery.CoolProp.Native;

/// <summary>CoolProp's C interface where C <c>long</c> has the width of a pointer: Linux and macOS.</summary>
internal sealed unsafe class NativeApiLongPointer : NativeApi
{
    private readonly delegate* unmanaged[Cdecl]<byte*, nint> _parameterIndex;
    private readonly delegate* unmanaged[Cdecl]<byte*, nint> _inputPairIndex;
    private readonly delegate* unmanaged[Cdecl]<byte*, byte*, int, nint> _globalText;
    private readonly delegate* unmanaged[Cdecl]<byte*, byte*, byte*, int, nint> _fluidText;
    private readonly delegate* unmanaged[Cdecl]<byte*, byte*, nint*, byte*, nint, nint> _create;
    private readonly delegate* unmanaged[Cdecl]<nint, nint*, byte*, nint, void> _free;
    private readonly delegate* unmanaged[Cdecl]<nint, byte*, nint*, byte*, nint, void> _fluidNames;
    private readonly delegate* unmanaged[Cdecl]<nint, double*, nint, nint*, byte*, nint, void> _setFractions;
    private readonly delegate* unmanaged[Cdecl]<nint, double*, nint, nint*, nint*, byte*, nint, void> _moleFractions;
    private readonly delegate* unmanaged[Cdecl]<nint, byte*, double*, nint, nint*, nint*, byte*, nint, void> _saturatedMoleFractions;
    private readonly delegate* unmanaged[Cdecl]<nint, nint, double, double, nint*, byte*, nint, void> _update;
    private readonly delegate* unmanaged[Cdecl]<nint, byte*, nint*, byte*, nint, void> _specifyPhase;
    private readonly delegate* unmanaged[Cdecl]<nint, nint*, byte*, nint, void> _unspecifyPhase;
    private readonly delegate* unmanaged[Cdecl]<nint, nint, nint*, byte*, nint, double> _output;
    private readonly delegate* unmanaged[Cdecl]<nint, byte*, nint, nint*, byte*, nint, double> _saturatedOutput;
    private readonly delegate* unmanaged[Cdecl]<nint, nint, nint, nint, nint*, byte*, nint, double> _derivative;

    public NativeApiLongPointer(ExportTable exports)
    {
        _parameterIndex = (delegate* unmanaged[Cdecl]<byte*, nint>)exports["get_param_index"];
        _inputPairIndex = (delegate* unmanaged[Cdecl]<byte*, nint>)exports["get_input_pair_index"];
        _globalText = (delegate* unmanaged[Cdecl]<byte*, byte*, int, nint>)exports["get_global_param_string"];
        _fluidText = (delegate* unmanaged[Cdecl]<byte*, byte*, byte*, int, nint>)exports["get_fluid_param_string"];
        _create = (delegate* unmanaged[Cdecl]<byte*, byte*, nint*, byte*, nint, nint>)exports["AbstractState_factory"];
        _free = (delegate* unmanaged[Cdecl]<nint, nint*, byte*, nint, void>)exports["AbstractState_free"];
        _fluidNames = (delegate* unmanaged[Cdecl]<nint, byte*, nint*, byte*, nint, void>)exports["AbstractState_fluid_names"];
        _setFractions = (delegate* unmanaged[Cdecl]<nint, double*, nint, nint*, byte*, nint, void>)exports["AbstractState_set_fractions"];
        _moleFractions = (delegate* unmanaged[Cdecl]<nint, double*, nint, nint*, nint*, byte*, nint, void>)exports["AbstractState_get_mole_fractions"];
        _saturatedMoleFractions =
            (delegate* unmanaged[Cdecl]<nint, byte*, double*, nint, nint*, nint*, byte*, nint, void>)exports["AbstractState_get_mole_fractions_satState"];
        _update = (delegate* unmanaged[Cdecl]<nint, nint, double, double, nint*, byte*, nint, void>)exports["AbstractState_update"];
        _specifyPhase = (delegate* unmanaged[Cdecl]<nint, byte*, nint*, byte*, nint, void>)exports["AbstractState_specify_phase"];
        _unspecifyPhase = (delegate* unmanaged[Cdecl]<nint, nint*, byte*, nint, void>)exports["AbstractState_unspecify_phase"];
        _output = (delegate* unmanaged[Cdecl]<nint, nint, nint*, byte*, nint, double>)exports["AbstractState_keyed_output"];
        _saturatedOutput = (delegate* unmanaged[Cdecl]<nint, byte*, nint, nint*, byte*, nint, double>)exports["AbstractState_keyed_output_satState"];
        _derivative = (delegate* unmanaged[Cdecl]<nint, nint, nint, nint, nint*, byte*, nint, double>)exports["AbstractState_first_partial_deriv"];
    }

    public override int ParameterIndex(byte* name) => (int)_parameterIndex(name);

    public override int InputPairIndex(byte* name) => (int)_inputPairIndex(name);

    public override bool GlobalText(byte* parameter, byte* output, int length) => _globalText(parameter, output, length) == 1;

    public override bool FluidText(byte* fluid, byte* parameter, byte* output, int length) => _fluidText(fluid, parameter, output, length) == 1;

    public override nint Create(byte* backend, byte* fluids, int* error, byte* message, int length)
    {
        nint code = 0;
        nint handle = _create(backend, fluids, &code, message, length);
        *error = (int)code;
        return handle;
    }

    public override void Free(nint handle, int* error, byte* message, int length)
    {
        nint code = 0;
        _free(handle, &code, message, length);
        *error = (int)code;
    }

    public override void FluidNames(nint handle, byte* names, int* error, byte* message, int length)
    {
        nint code = 0;
        _fluidNames(handle, names, &code, message, length);
        *error = (int)code;
    }

    public override void SetFractions(nint handle, double* fractions, int count, int* error, byte* message, int length)
    {
        nint code = 0;
        _setFractions(handle, fractions, count, &code, message, length);
        *error = (int)code;
    }

    public override int MoleFractions(nint handle, double* fractions, int capacity, int* error, byte* message, int length)
    {
        nint code = 0;
        nint count = 0;
        _moleFractions(handle, fractions, capacity, &count, &code, message, length);
        *error = (int)code;
        return (int)count;
    }

    public override int SaturatedMoleFractions(
        nint handle, byte* side, double* fractions, int capacity, int* error, byte* message, int length)
    {
        nint code = 0;
        nint count = 0;
        _saturatedMoleFractions(handle, side, fractions, capacity, &count, &code, message, length);
        *error = (int)code;
        return (int)count;
    }

    public override void Update(nint handle, int pair, double first, double second, int* error, byte* message, int length)
    {
        nint code = 0;
        _update(handle, pair, first, second, &code, message, length);
        *error = (int)code;
    }

    public override void SpecifyPhase(nint handle, byte* phase, int* error, byte* message, int length)
    {
        nint code = 0;
        _specifyPhase(handle, phase, &code, message, length);
        *error = (int)code;
    }

    public override void UnspecifyPhase(nint handle, int* error, byte* message, int length)
    {
        nint code = 0;
        _unspecifyPhase(handle, &code, message, length);
        *error = (int)code;
    }

    public override double Output(nint handle, int parameter, int* error, byte* message, int length)
    {
        nint code = 0;
        double value = _output(handle, parameter, &code, message, length);
        *error = (int)code;
        return value;
    }

    public override double SaturatedOutput(nint handle, byte* side, int parameter, int* error, byte* message, int length)
    {
        nint code = 0;
        double value = _saturatedOutput(handle, side, parameter, &code, message, length);
        *error = (int)code;
        return value;
    }

    public override double Derivative(nint handle, int of, int by, int at, int* error, byte* message, int length)
    {
        nint code = 0;
        double value = _derivative(handle, of, by, at, &code, message, length);
        *error = (int)code;
        return value;
    }
}
