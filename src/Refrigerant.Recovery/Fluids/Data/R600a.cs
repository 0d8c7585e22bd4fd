using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-600a, isobutane. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R600a
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-600a",
        Name = "isobutane",
        CasNumber = "75-28-5",
        Source = "D. Buecker and W. Wagner, (2006), Reference Equations of State for the Thermodynamic Properties of "
            + "Fluid Phase n-Butane and Isobutane, J. Phys. Chem. Ref. Data, vol. 35, 929-1019, "
            + "doi:10.1063/1.1901687",
        MolarMass = 0.0581222,
        GasConstant = 8.314472,
        ReducingTemperature = 407.81,
        ReducingMolarDensity = 3879.756788283995,
        CriticalTemperature = 407.817,
        CriticalPressure = 3629000,
        CriticalMolarDensity = 3879.756788283995,
        AcentricFactor = 0.183531783208,
        MinimumTemperature = 113.73,
        MaximumTemperature = 575,
        MaximumPressure = 35000000,
        IdealGas = new IdealHelmholtz(
            logTau: 3.05956619,
            tauLogTau: 0,
            powers: new double[0, 2],
            planckEinstein: new double[,]
            {
                { 4.94641014, 0.951277902 },
                { 4.09475197, 2.387895885 },
                { 15.6632824, 4.346904269 },
                { 9.73918122, 10.36885864 },
            }),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 2.0686820727966, 1, 0.5, 0 },
                { -3.6400098615204, 1, 1, 0 },
                { 0.51968754427244, 1, 1.5, 0 },
                { 0.17745845870123, 2, 0, 0 },
                { -0.12361807851599, 3, 0.5, 0 },
                { 0.045145314010528, 4, 0.5, 0 },
                { 0.03047647996598, 4, 0.75, 0 },
                { 0.75508387706302, 1, 2, 1 },
                { -0.85885381015629, 1, 2.5, 1 },
                { 0.036324009830684, 2, 2.5, 1 },
                { -0.01954879945055, 7, 1.5, 1 },
                { -0.004445239290496, 8, 1, 1 },
                { 0.004641076366646, 8, 1.5, 1 },
                { -0.071444097992825, 1, 4, 2 },
                { -0.080765060030713, 2, 7, 2 },
                { 0.15560460945053, 3, 3, 2 },
                { 0.0020318752160332, 3, 7, 2 },
                { -0.10624883571689, 4, 3, 2 },
                { 0.039807690546305, 5, 1, 2 },
                { 0.016371431292386, 5, 6, 2 },
                { 0.00053212200682628, 10, 0, 2 },
                { -0.0078681561156387, 2, 6, 3 },
                { -0.0030981191888963, 6, 13, 3 },
            },
            Gaussian = new double[,]
            {
                { -0.042276036810382, 1, 2, 10, 150, 1.16, 0.85 },
                { -0.0053001044558079, 2, 0, 10, 200, 1.13, 1 },
            },
        },
        SaturationViscosity = new double[,]
        {
            { 201, 0.00053768, 5.1047E-06 },
            { 218.69, 0.00040364, 5.5441E-06 },
            { 236.38, 0.0003132, 5.9759E-06 },
            { 254.07, 0.00024904, 6.4025E-06 },
            { 271.76, 0.00020174, 6.8302E-06 },
            { 289.45, 0.00016578, 7.2703E-06 },
            { 307.14, 0.00013763, 7.7409E-06 },
            { 324.83, 0.00011489, 8.2717E-06 },
            { 342.51, 9.5865E-05, 8.9138E-06 },
            { 360.2, 7.9191E-05, 9.769E-06 },
            { 377.89, 6.3641E-05, 1.107E-05 },
            { 395.58, 4.732E-05, 1.3587E-05 },
        },
    };
}
