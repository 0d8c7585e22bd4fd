using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-236ea, 1,1,1,2,3,3-hexafluoropropane. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R236ea
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-236ea",
        Name = "1,1,1,2,3,3-hexafluoropropane",
        CasNumber = "431-63-0",
        Source = "Xinfang Rui and Jiang Pan and Yugang Wang, (2013), An equation of state for the thermodynamic "
            + "properties of 1,1,1,2,3,3-hexafluoropropane (R236ea), Fluid Phase Equilib., vol. 341, 78-85, "
            + "doi:10.1016/j.fluid.2012.12.026",
        MolarMass = 0.1520384,
        GasConstant = 8.314472,
        ReducingTemperature = 412.44,
        ReducingMolarDensity = 3716.16644216198,
        CriticalTemperature = 412.44,
        CriticalPressure = 3415700.7078681667,
        CriticalMolarDensity = 3716.16644216198,
        AcentricFactor = 0.3682166321629954,
        MinimumTemperature = 170,
        MaximumTemperature = 412,
        MaximumPressure = 6000000,
        IdealGas = new IdealHelmholtz(
            logTau: 2.762,
            tauLogTau: 0,
            powers: new double[0, 2],
            planckEinstein: new double[,]
            {
                { 0.7762, 0.3491416933372127 },
                { 10.41, 0.93346911065852 },
                { 12.18, 3.724178062263602 },
                { 3.332, 17.26554165454369 },
            }),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 0.051074, 4, 1, 0 },
                { 2.5584, 1, 0.264, 0 },
                { -2.918, 1, 0.5638, 0 },
                { -0.71485, 2, 1.306, 0 },
                { 0.15534, 3, 0.2062, 0 },
                { -1.5894, 1, 2.207, 2 },
                { -0.784, 3, 2.283, 2 },
                { 0.85767, 2, 1.373, 1 },
                { -0.67235, 2, 2.33, 2 },
                { -0.017953, 7, 0.6376, 1 },
            },
            Gaussian = new double[,]
            {
                { 1.3165, 1, 1.08, 1.019, 1.3, 1.13, 0.7119 },
                { -0.42023, 1, 1.67, 1.341, 2.479, 0.6691, 0.9102 },
                { -0.28053, 3, 3.502, 1.034, 1.068, 0.465, 0.678 },
                { -1.4134, 3, 4.357, 5.264, 79.85, 1.28, 0.7091 },
                { -6.2617E-06, 2, 0.6945, 24.44, 49.06, 0.8781, 1.727 },
            },
        },
        SaturationViscosity = new double[,]
        {
            { 201, 0.0054484, 7.3182E-06 },
            { 219.1, 0.0018967, 7.9881E-06 },
            { 237.19, 0.0011084, 8.6551E-06 },
            { 255.29, 0.00075343, 9.3142E-06 },
            { 273.39, 0.00055111, 9.9616E-06 },
            { 291.48, 0.00042027, 1.0599E-05 },
            { 309.58, 0.00032825, 1.1234E-05 },
            { 327.68, 0.00025945, 1.189E-05 },
            { 345.78, 0.00020536, 1.2628E-05 },
            { 363.87, 0.00016087, 1.3606E-05 },
            { 381.97, 0.00012226, 1.5186E-05 },
            { 400.07, 8.5087E-05, 1.8661E-05 },
        },
    };
}
