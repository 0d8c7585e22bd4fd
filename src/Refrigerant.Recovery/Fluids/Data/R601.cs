using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-601, pentane. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R601
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-601",
        Name = "pentane",
        CasNumber = "109-66-0",
        Source = "M. Thol and T. Uhde and E.W. Lemmon and R. Span, (2019), Fundamental Equations of State for "
            + "Hydrocarbons. Part I. n-Pentane, Fluid Phase Equilib.",
        MolarMass = 0.07214878,
        GasConstant = 8.3144598,
        ReducingTemperature = 469.7,
        ReducingMolarDensity = 3210,
        CriticalTemperature = 469.70000000000005,
        CriticalPressure = 3367518.9947363394,
        CriticalMolarDensity = 3215.5775884221466,
        AcentricFactor = 0.251031912680427,
        MinimumTemperature = 143.47,
        MaximumTemperature = 650,
        MaximumPressure = 780000000,
        IdealGas = new IdealHelmholtz(
            logTau: 3,
            tauLogTau: 0,
            powers: new double[0, 2],
            planckEinstein: new double[,]
            {
                { 6.618, 0.3278688524590164 },
                { 15.97, 2.8188205237385566 },
                { 15.29, 5.607834788162657 },
            }),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 0.042952795, 4, 1, 0 },
                { 2.4923999, 1, 0.367, 0 },
                { -2.603872, 1, 0.704, 0 },
                { -0.83829913, 2, 1.04, 0 },
                { 0.19223378, 3, 0.494, 0 },
                { -3.0778196, 1, 1.34, 2 },
                { -0.000324816, 1, 0.688, 3 },
                { -1.6781976, 3, 1.688, 2 },
                { 0.6416425, 2, 0.88, 1 },
                { -1.7300934, 2, 1.357, 2 },
                { -0.017585046, 7, 1.021, 1 },
            },
            Gaussian = new double[,]
            {
                { 4.5708883, 1, 0.979, 1.01, 0.583, 1.06, 0.927 },
                { -0.0758188, 1, 2.966, 4.77, 31.6, 1.37, 0.968 },
                { -0.62122633, 3, 1.35, 1.13, 0.52, 1.09, 0.735 },
                { -0.42413043, 2, 0.664, 1.08, 0.654, 1.19, 1.196 },
                { -2.0418443, 2, 0.937, 1.12, 0.75, 0.83, 0.617 },
            },
        },
        SaturationViscosity = new double[,]
        {
            { 201, 0.00044912, 4.5034E-06 },
            { 224.15, 0.00037403, 5.0411E-06 },
            { 247.29, 0.00029998, 5.5746E-06 },
            { 270.44, 0.00023774, 6.0947E-06 },
            { 293.59, 0.00018817, 6.5897E-06 },
            { 316.73, 0.00014929, 7.0484E-06 },
            { 339.88, 0.00011858, 7.4624E-06 },
            { 363.02, 9.3876E-05, 7.8289E-06 },
            { 386.17, 7.3492E-05, 8.1582E-06 },
            { 409.32, 5.6243E-05, 8.4863E-06 },
            { 432.46, 4.1125E-05, 8.9214E-06 },
            { 455.61, 2.6828E-05, 9.8944E-06 },
        },
    };
}
