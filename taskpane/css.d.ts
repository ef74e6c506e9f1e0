/** Style sheets are imported for their effect: webpack writes them to a file of their own. */
declare module "*.css";
